import { nearestWord } from "../base/words/index.ts";
import { type JsonNode, type JsonText, keysInText } from "./jsonText.ts";
import type { Problem } from "./problem.ts";
import { allKeyPaths, type KeyPath, keysAt, pathText } from "./schemaWalk.ts";
import { aircraftSentences } from "./sentences.ts";

/** Keys the aircraft file does not know, and keys given twice. */
export function keyProblems(file: string, json: JsonText, root: JsonNode): readonly Problem[] {
  const firstLines = new Map<string, number>();
  const problems: Problem[] = [];
  for (const { path, offset } of keysInText(root)) {
    const line = json.lineAt(offset);
    const place = `${file} line ${line}`;
    const written = pathText(path);
    const first = firstLines.get(written);
    if (first !== undefined) {
      problems.push({
        code: "aircraft-key-twice",
        line,
        text: aircraftSentences.keyTwice(place, written, first),
      });
      continue;
    }
    firstLines.set(written, line);
    const allowed = keysAt(path.slice(0, -1));
    if (allowed === null || allowed.includes(String(path.at(-1)))) continue;
    const text = aircraftSentences.unknownKey(place, written, helpFor(path, allowed));
    problems.push({ code: "aircraft-key-unknown", line, text });
  }
  return problems;
}

/** The right key here, else the same key in another part, else the keys that may stand here. */
function helpFor(path: KeyPath, allowed: readonly string[]): string {
  const name = String(path.at(-1));
  const above = path.slice(0, -1);
  const here = nearestWord(name, allowed);
  const elsewhere = allKeyPaths().find((known) => known.split(".").at(-1) === name);
  if (elsewhere !== undefined) return aircraftSentences.didYouMean(elsewhere);
  if (here !== null) return aircraftSentences.didYouMean(pathText([...above, here]));
  const anywhere = nearestWord(
    name,
    allKeyPaths().map((known) => String(known.split(".").at(-1))),
  );
  const full = allKeyPaths().find((known) => known.split(".").at(-1) === anywhere);
  return full === undefined ? aircraftSentences.keysAre(allowed) : aircraftSentences.didYouMean(full);
}
