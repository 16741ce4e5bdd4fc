import type { Notice } from "../../src/base/notices/index.ts";
import type { ReadOutcome } from "../../src/log/reading/index.ts";
import type { ReadSums } from "./readSums.ts";

/** What no outcome may show, whatever the bytes were; the first fault found, or null. */
export function unsound(outcome: ReadOutcome, sums: ReadSums | null): string | null {
  const notices = outcome.state === "read" ? (sums?.recording.notices ?? []) : outcome.notices;
  const told = notices.find((notice) => isBadText(notice));
  if (told !== undefined) return `notice ${told.code}: ${told.text.slice(0, 200)}`;
  if (outcome.state !== "read") {
    return outcome.notices.some((notice) => notice.severity === outcome.state)
      ? null
      : "stopped without a reason";
  }
  return sums === null ? "read, but not recorded" : unsoundNumbers(sums);
}

/** Words of the program's own failure; quoted text is the file's. */
function isBadText({ text, lines = [], count = 0 }: Notice): boolean {
  const own = text.replace(/"[^"]*"/g, "");
  return /\bNaN\b|Infinity|undefined|\[object/.test(own) || ![...lines, count].every(Number.isInteger);
}

function unsoundNumbers({ log, recording, chargeMah, energyWh }: ReadSums): string | null {
  for (const [name, values] of [["timeS", log.timeS] as const, ...log.channels, ...recording.channels]) {
    for (const value of values) if (Math.abs(value) === Infinity) return `${name} holds ${value}`;
  }
  for (let row = 0; row < recording.rows; row++) {
    const isRising = row === 0 || recording.timeS[row]! > recording.timeS[row - 1]!;
    if (!Number.isFinite(recording.timeS[row]!) || !isRising) return `the clock does not rise at row ${row}`;
  }
  const facts = [recording.durationS, recording.stepS, recording.rowsUsed, recording.rows];
  if (!facts.every(Number.isFinite)) return `durations or counts: ${facts.join(" ")}`;
  return [chargeMah, energyWh].some((sum) => Math.abs(sum) === Infinity) ? "infinite sums" : null;
}
