import type { Notice } from "../base/notices/index.ts";
import type { Budget } from "./budget.ts";
import type { Facts } from "./facts.ts";
import { budgetOf, factsOf, readingsOf } from "./fromFile.ts";
import {
  isTooLarge,
  type JsonText,
  keysInText,
  MOST_CHARACTERS,
  plainValue,
  readJsonText,
} from "./jsonText.ts";
import { keyProblems } from "./keyProblems.ts";
import { type Problem, refusals } from "./problem.ts";
import type { RememberedReading } from "./readings.ts";
import { pathText } from "./schemaWalk.ts";
import { aircraftSentences, JSON_PROBLEMS } from "./sentences.ts";
import { checkValues } from "./valueProblems.ts";

export interface ReadAircraft {
  readonly state: "read";
  readonly facts: Facts;
  readonly budget: Budget;
  readonly readings: readonly RememberedReading[];
  /** Cells in series, always given. */
  readonly cells: number;
  /** Line of each key the file gives ("pack.cells" to 5); a key not in it was left to its default. */
  readonly givenInLine: ReadonlyMap<string, number>;
}

/** Nothing of the file can be used; each notice names the key, the line, the value and what is allowed. */
export interface AircraftNotRead {
  readonly state: "refusal";
  readonly notices: readonly Notice[];
}

/**
 * Reads an aircraft file. `text` is JSON in which comments and trailing commas are allowed;
 * `fileName` is used in messages only.
 */
export function parseAircraftFile(text: string, fileName: string): ReadAircraft | AircraftNotRead {
  if (isTooLarge(text)) {
    return refused([
      { code: "aircraft-too-large", line: 1, text: aircraftSentences.tooLarge(fileName, MOST_CHARACTERS) },
    ]);
  }
  const json = readJsonText(text.replace(/^\uFEFF/, ""));
  if (json.root?.type !== "object") {
    return refused([{ code: "aircraft-not-object", line: 1, text: aircraftSentences.notObject(fileName) }]);
  }
  if (json.firstError) return refused([notJson(fileName, json.firstError)]);
  const wrongKeys = keyProblems(fileName, json, json.root);
  if (wrongKeys.length > 0) return refused(wrongKeys);
  const checked = checkValues(fileName, json, plainValue(json.root));
  if (checked.state === "wrong") return refused(checked.problems);
  const { file } = checked;
  return {
    state: "read",
    facts: factsOf(file),
    budget: budgetOf(file),
    readings: readingsOf(file),
    cells: file.pack.cells,
    givenInLine: givenInLine(json),
  };
}

function refused(problems: readonly Problem[]): AircraftNotRead {
  return { state: "refusal", notices: refusals(problems) };
}

function notJson(fileName: string, error: NonNullable<JsonText["firstError"]>): Problem {
  const problem = JSON_PROBLEMS[error.code] ?? "this is not JSON";
  const text = aircraftSentences.notJson(`${fileName} line ${error.line}`, problem);
  return { code: "aircraft-not-json", line: error.line, text };
}

function givenInLine(json: JsonText): ReadonlyMap<string, number> {
  const keys = json.root ? keysInText(json.root) : [];
  return new Map(keys.map(({ path, offset }) => [pathText(path), json.lineAt(offset)]));
}
