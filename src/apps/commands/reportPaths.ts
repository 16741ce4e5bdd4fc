import { basename, dirname, extname, join, resolve } from "node:path";
import { usageFailure } from "./failure.ts";
import { STANDARD_INPUT } from "./logInput.ts";
import { usageSentences } from "./sentences.ts";

/**
 * Where each log's report goes, as the user would write it: beside the log for `--report` alone (`wanted`
 * empty), the named file for one log, the named folder for several. Null without the option.
 */
export function reportPaths(
  wanted: string | null,
  logs: readonly string[],
): ReadonlyMap<string, string> | null {
  if (wanted === null) return null;
  const paths = new Map(logs.map((log) => [log, pathFor(wanted, log, logs.length)]));
  const seen = new Set<string>();
  for (const path of paths.values()) {
    if (seen.has(resolve(path))) throw usageFailure(usageSentences.reportClash(path));
    seen.add(resolve(path));
  }
  return paths;
}

function pathFor(wanted: string, log: string, logs: number): string {
  const isInput = log === STANDARD_INPUT;
  if (wanted === "") {
    if (isInput) throw usageFailure(usageSentences.reportOfInput());
    return join(dirname(log), htmlName(log));
  }
  const isHtml = /\.html?$/i.test(wanted);
  if (logs === 1) {
    if (!isHtml) throw usageFailure(usageSentences.reportNotHtml(wanted));
    return wanted;
  }
  if (isHtml) throw usageFailure(usageSentences.reportManyIntoOne(wanted));
  return join(wanted, isInput ? "standard-input.html" : htmlName(log));
}

/** "flights/tern-03.csv" to "tern-03.html". */
function htmlName(log: string): string {
  return `${basename(log, extname(log))}.html`;
}
