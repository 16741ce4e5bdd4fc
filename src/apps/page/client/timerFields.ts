import type { DisplayUnits } from "../../../base/quantity/index.ts";
import { GIVEN_RANGES } from "../../../season/logbook/index.ts";
import type { TimerWork } from "../messages.ts";
import { element, settled } from "./element.ts";
import { field } from "./field.ts";
import { numberField } from "./numberField.ts";

type Next = Omit<TimerWork, "kind" | "aircraft">;

const NUMBERS = [
  { key: "ambientC", label: "Air temperature", help: "Empty: the hottest day." },
  { key: "reservePct", label: "Reserve", help: "Empty: the aircraft file's." },
  { key: "startPct", label: "Charge at the start", help: "Empty: full." },
] as const;

/** The next flight as the timer wants to know it; asked once at the start and after each change. */
export function timerFields(
  packs: readonly string[],
  units: DisplayUnits,
  ask: (next: Next) => void,
): HTMLElement {
  const pack = element("select", { name: "pack" }, element("option", { value: "" }, "any pack"));
  for (const name of packs) pack.append(element("option", { value: name }, name));
  const numbers = NUMBERS.map((line) => {
    const own = numberField({ ...line, range: GIVEN_RANGES[line.key], value: null, units });
    own.input.name = line.key;
    return own;
  });
  const read = (): void => {
    const [ambientC, reservePct, startPct] = numbers.map((own) => own.read());
    if (ambientC === undefined || reservePct === undefined || startPct === undefined) return;
    ask({ pack: pack.value === "" ? null : pack.value, ambientC, reservePct, startPct });
  };
  const later = settled(read);
  pack.addEventListener("change", read);
  for (const { input } of numbers) input.addEventListener("input", later);
  const packField = field({ label: "Pack that will fly" }, pack);
  read();
  return element("div", { class: "next-flight" }, packField.root, ...numbers.map(({ root }) => root));
}
