import type { AircraftKey } from "../../../aircraft/index.ts";
import type { Notice } from "../../../base/notices/index.ts";
import type { DisplayUnits } from "../../../base/quantity/index.ts";
import { capital } from "../../../base/words/index.ts";
import { AIRCRAFT_GROUPS, OTHER_QUESTION } from "./aircraftGroups.ts";
import { element } from "./element.ts";
import { allowedWords, type KeyField, type KeyValue, keyField, labelOf } from "./keyField.ts";
import { noticeItems } from "./notices.ts";
import { clientWords } from "./words.ts";

/** The whole form: a group for each question. */
export interface AircraftForm {
  readonly root: HTMLElement;
  /** Puts each fault beside the line it is about, what no line is about at the top. */
  readonly faults: (notices: readonly Notice[]) => void;
  /** True while a line is marked. */
  readonly isWrong: () => boolean;
}

export function aircraftForm(
  keys: readonly AircraftKey[],
  values: Readonly<Record<string, KeyValue>>,
  units: DisplayUnits,
  change: (path: string, value: KeyValue) => void,
): AircraftForm {
  const fields = new Map<string, KeyField>();
  const byPath = new Map(keys.map((key) => [key.path, key]));
  const typed = (own: KeyField): void => {
    const value = own.read();
    const key = byPath.get(own.path);
    own.fault(value === undefined ? clientWords.wrongNumber(key?.what ?? own.path) : null);
    if (value !== undefined) change(own.path, value);
  };
  const lineOf = (path: string): readonly HTMLElement[] => {
    const key = byPath.get(path);
    if (key === undefined) return [];
    const own = keyField(key, values[path] ?? null, units, typed);
    fields.set(path, own);
    return [own.root];
  };
  const asked = new Set(AIRCRAFT_GROUPS.flatMap((group) => group.keys));
  const others = keys.map(({ path }) => path).filter((path) => !asked.has(path));
  const groups = [...AIRCRAFT_GROUPS, { question: OTHER_QUESTION, keys: others }].map(
    ({ question, keys: own }) =>
      element(
        "fieldset",
        {},
        element("legend", {}, question),
        element("div", { class: "lines-of-form" }, ...own.flatMap(lineOf)),
      ),
  );
  const top = element("div", { class: "wrong-top" });
  const root = element("div", { class: "aircraft-form" }, top, ...groups);
  return {
    root,
    faults: (notices) => showFaults(notices, { fields, byPath, units, top }),
    isWrong: () => root.querySelector("[aria-invalid]") !== null,
  };
}

interface Shown {
  readonly fields: ReadonlyMap<string, KeyField>;
  readonly byPath: ReadonlyMap<string, AircraftKey>;
  readonly units: DisplayUnits;
  readonly top: HTMLElement;
}

function showFaults(notices: readonly Notice[], { fields, byPath, units, top }: Shown): void {
  for (const own of fields.values()) if (own.read() !== undefined) own.fault(null);
  const rest = notices.filter(({ text, code }) => {
    const path = [...fields.keys()].find((one) => text.includes(`: ${one} is `));
    const [key, own] = [byPath.get(path ?? ""), fields.get(path ?? "")];
    if (key === undefined || own === undefined) return true;
    const range = clientWords.outOfRange(labelOf(key), allowedWords(key, units));
    own.fault(
      code === "aircraft-value-wrong" || code === "aircraft-key-missing" ? range : withoutPlace(text),
    );
    return false;
  });
  top.replaceChildren(...(rest.length === 0 ? [] : [noticeItems(rest)]));
}

/** "tern.json line 6: controller.burstA is …" without file and line, which a form does not show. */
function withoutPlace(text: string): string {
  return capital(text.replace(/^.*? line \d+: /, ""));
}
