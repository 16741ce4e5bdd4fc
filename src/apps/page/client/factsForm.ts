import { type DisplayUnits, minutesAndSeconds } from "../../../base/quantity/index.ts";
import {
  GIVEN_RANGES,
  type GivenFacts,
  type GivenNumber,
  NOTHING_GIVEN,
  propellerSize,
  propellerText,
} from "../../../season/logbook/index.ts";
import { element } from "./element.ts";
import { type Field, type FieldWords, field, textInput } from "./field.ts";
import { numberField } from "./numberField.ts";
import { clientWords } from "./words.ts";

/** Facts of a flight that no log holds, as the pilot fills them in. */
export interface FactsForm {
  readonly root: HTMLElement;
  /** Null while a line is wrong; the lines say what. */
  readonly read: () => GivenFacts | null;
}

type Key = Exclude<keyof GivenFacts, "putBackFlights">;
type Value = string | number | null;
type Read = (text: string) => { readonly value: Value } | { readonly wrong: string };

interface NumberLine extends FieldWords {
  readonly key: Key & GivenNumber;
}
interface TextLine extends FieldWords {
  readonly key: Exclude<Key, GivenNumber>;
  readonly read: Read;
}

/** A line in place: undefined while it is wrong. */
interface LineField extends Field {
  readonly key: Key;
  readonly value: () => Value | undefined;
}

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

const LINES: readonly (NumberLine | TextLine)[] = [
  { key: "pack", label: "Pack", help: "The name you gave the pack that flew.", read: words },
  {
    key: "putBackMah",
    label: "Put-back",
    help: "What the charger returned. It checks the current sensor.",
  },
  { key: "ambientC", label: "Air temperature", help: "Of the day, in the shade." },
  {
    key: "propeller",
    label: "Propeller",
    help: "Only when another one flew than the fitted one, as 18x10.",
    read: propeller,
  },
  { key: "flownS", label: "Flown", unit: "min:s", help: "By your own watch.", read: flown },
  { key: "startPct", label: "Charge at the start", help: "Only when the pack was not full." },
  { key: "date", label: "Day", help: "Where the log does not tell.", read: words },
  { key: "note", label: "Note", read: words },
];

const LONGEST: Readonly<Partial<Record<Key, number>>> = { pack: 60, note: 500 };
const PACKS = "packs-known";

export function factsForm(given: GivenFacts, packs: readonly string[], units: DisplayUnits): FactsForm {
  const list = element("datalist", { id: PACKS }, ...packs.map((value) => element("option", { value })));
  const lines = LINES.map((line) => {
    const own = "read" in line ? textLine(line, given) : numberLine(line, given, units);
    own.input.name = line.key;
    if (own.input instanceof HTMLInputElement) own.input.maxLength = LONGEST[line.key] ?? 60;
    return own;
  });
  const root = element("div", { class: "facts-form" }, ...lines.map((line) => line.root), list);
  return { root, read: () => readLines(lines) };
}

function numberLine({ key, ...own }: NumberLine, given: GivenFacts, units: DisplayUnits): LineField {
  const made = numberField({ ...own, range: GIVEN_RANGES[key], value: given[key], units });
  return { ...made, key, value: made.read };
}

function textLine({ key, read, ...own }: TextLine, given: GivenFacts): LineField {
  const before = key === "flownS" && given.flownS !== null ? minutesAndSeconds(given.flownS) : given[key];
  const input = textInput(String(before ?? ""), false, key === "pack" ? PACKS : null);
  if (key === "date") input.type = "date";
  const made = field(own, input);
  const value = (): Value | undefined => {
    const found = read(input.value);
    made.fault("wrong" in found ? found.wrong : null);
    return "wrong" in found ? undefined : found.value;
  };
  return { ...made, key, value };
}

function readLines(lines: readonly LineField[]): GivenFacts | null {
  const entries = lines.map((line) => ({ line, value: line.value() }));
  const wrong = entries.find(({ value }) => value === undefined);
  if (wrong !== undefined) {
    wrong.line.input.focus();
    return null;
  }
  return { ...NOTHING_GIVEN, ...Object.fromEntries(entries.map(({ line, value }) => [line.key, value])) };
}
