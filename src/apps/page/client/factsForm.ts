import { minutesAndSeconds } from "../../../base/quantity/index.ts";
import {
  type GivenFacts,
  NOTHING_GIVEN,
  propellerSize,
  propellerText,
} from "../../../season/logbook/index.ts";
import { element } from "./element.ts";
import { type Field, type FieldWords, field, textInput, typedNumber } from "./field.ts";
import { clientWords } from "./words.ts";

/** Facts of a flight that no log holds, as the pilot fills them in. */
export interface FactsForm {
  readonly root: HTMLElement;
  /** Null while a line is wrong; the lines say what. */
  readonly read: () => GivenFacts | null;
}

type Key = Exclude<keyof GivenFacts, "putBackFlights">;
type Read = (text: string) => { readonly value: string | number | null } | { readonly wrong: string };

interface Line extends FieldWords {
  readonly key: Key;
  readonly read: Read;
  readonly isNumber: boolean;
}

const between =
  (low: number, high: number, what: string): Read =>
  (text) => {
    const value = typedNumber(text);
    if (Number.isNaN(value)) return { wrong: clientWords.wrongNumber(what) };
    const isOut = value !== null && (value < low || value > high);
    return isOut ? { wrong: clientWords.outOfRange(what, `from ${low} to ${high}`) } : { value };
  };
const words: Read = (text) => ({ value: text.trim() === "" ? null : text.trim() });

const propeller: Read = (text) => {
  if (text.trim() === "") return { value: null };
  const size = propellerSize(text);
  return size === null ? { wrong: clientWords.wrongPropeller } : { value: propellerText(size) };
};

const flown: Read = (text) => {
  if (text.trim() === "") return { value: null };
  const found = /^(\d{1,3}):([0-5]\d)$/.exec(text.trim());
  const seconds = 60 * Number(found?.[1]) + Number(found?.[2]);
  return seconds > 0 ? { value: seconds } : { wrong: clientWords.wrongTime };
};

const LINES: readonly Line[] = [
  { key: "pack", label: "Pack", help: "The name you gave the pack that flew.", read: words, isNumber: false },
  {
    key: "putBackMah",
    label: "Put-back",
    unit: "mAh",
    help: "What the charger returned. It checks the current sensor.",
    read: between(1, 200_000, "Put-back"),
    isNumber: true,
  },
  {
    key: "ambientC",
    label: "Air temperature",
    unit: "°C",
    help: "Of the day, in the shade.",
    read: between(-40, 60, "Air temperature"),
    isNumber: true,
  },
  {
    key: "propeller",
    label: "Propeller",
    help: "Only when another one flew than the fitted one, as 18x10.",
    read: propeller,
    isNumber: false,
  },
  { key: "flownS", label: "Flown", unit: "min:s", help: "By your own watch.", read: flown, isNumber: false },
  {
    key: "startPct",
    label: "Charge at the start",
    unit: "%",
    help: "Only when the pack was not full.",
    read: between(1, 100, "Charge at the start"),
    isNumber: true,
  },
  { key: "date", label: "Day", help: "Where the log does not tell.", read: words, isNumber: false },
  { key: "note", label: "Note", read: words, isNumber: false },
];

const LONGEST: Readonly<Record<string, number>> = { pack: 60, note: 500 };

export function factsForm(given: GivenFacts, packs: readonly string[]): FactsForm {
  const list = element(
    "datalist",
    { id: "packs-known" },
    ...packs.map((value) => element("option", { value })),
  );
  const lines = LINES.map((line) => ({ line, made: lineField(line, given) }));
  const root = element("div", { class: "facts-form" }, ...lines.map(({ made }) => made.root), list);
  return { root, read: () => readLines(lines) };
}

function lineField({ key, isNumber, ...own }: Line, given: GivenFacts): Field {
  const value = given[key];
  const text =
    key === "flownS" && given.flownS !== null ? minutesAndSeconds(given.flownS) : String(value ?? "");
  const input = textInput(text, isNumber, key === "pack" ? "packs-known" : null);
  if (key === "date") input.type = "date";
  input.name = key;
  input.maxLength = LONGEST[key] ?? 60;
  return field(own, input);
}

function readLines(lines: readonly { readonly line: Line; readonly made: Field }[]): GivenFacts | null {
  const entries = lines.map(({ line, made }) => {
    const read = line.read(made.input.value);
    made.fault("wrong" in read ? read.wrong : null);
    return [line.key, "wrong" in read ? undefined : read.value] as const;
  });
  const wrong = entries.findIndex(([, value]) => value === undefined);
  if (wrong >= 0) {
    lines[wrong]?.made.input.focus();
    return null;
  }
  return { ...NOTHING_GIVEN, ...Object.fromEntries(entries) };
}
