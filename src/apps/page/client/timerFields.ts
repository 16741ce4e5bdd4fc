import type { TimerWork } from "../messages.ts";
import { element, settled } from "./element.ts";
import { field, textInput, typedNumber } from "./field.ts";
import { clientWords } from "./words.ts";

type Next = Omit<TimerWork, "kind" | "aircraft">;

const NUMBERS = [
  {
    key: "ambientC",
    label: "Air temperature",
    unit: "°C",
    low: -40,
    high: 60,
    help: "Empty: the hottest day.",
  },
  { key: "reservePct", label: "Reserve", unit: "%", low: 0, high: 90, help: "Empty: the aircraft file's." },
  { key: "startPct", label: "Charge at the start", unit: "%", low: 1, high: 100, help: "Empty: full." },
] as const;

/** The next flight as the timer wants to know it; asked once at the start and after each change. */
export function timerFields(packs: readonly string[], ask: (next: Next) => void): HTMLElement {
  const pack = element("select", { name: "pack" }, element("option", { value: "" }, "any pack"));
  for (const name of packs) pack.append(element("option", { value: name }, name));
  const numbers = NUMBERS.map((one) => {
    const input = textInput("", true);
    input.name = one.key;
    return { ...one, field: field(one, input), input };
  });
  const read = (): void => {
    const values = numbers.map(({ key, label, low, high, field: own, input }) => {
      const value = typedNumber(input.value);
      const isOut = value !== null && (value < low || value > high);
      const range = clientWords.outOfRange(label, `from ${low} to ${high}`);
      own.fault(Number.isNaN(value) ? clientWords.wrongNumber(label) : isOut ? range : null);
      return [key, value, Number.isNaN(value) || isOut] as const;
    });
    if (values.some(([, , isWrong]) => isWrong)) return;
    const [ambientC = null, reservePct = null, startPct = null] = values.map(([, value]) => value);
    ask({ pack: pack.value === "" ? null : pack.value, ambientC, reservePct, startPct });
  };
  const later = settled(200, read);
  pack.addEventListener("change", read);
  for (const { input } of numbers) input.addEventListener("input", later);
  const packField = field({ label: "Pack that will fly" }, pack);
  read();
  return element("div", { class: "next-flight" }, packField.root, ...numbers.map((one) => one.field.root));
}
