import type { Random } from "../generator/random.ts";
import { exactSums } from "./exactSums.ts";
import { flightNumbers } from "./flightNumbers.ts";
import { bytesOf, plainTable, textOf } from "./logText.ts";
import { readSums } from "./readSums.ts";

/**
 * A clean log cut at every `everyBytes` (power lost): every complete line before the cut counts, nothing after it
 * does, and a cut inside a line is told. Returns the number of cuts and the first fault.
 */
export function cutTrials(
  random: Random,
  everyBytes: number,
): { readonly cuts: number; readonly fault: string | null } {
  const rows = flightNumbers(random);
  const text = textOf(plainTable(rows));
  const bytes = bytesOf(text);
  let cuts = 0;
  for (let cut = 0; cut <= bytes.length; cut += everyBytes) {
    cuts++;
    const fault = cutFault(bytes.subarray(0, cut), text.slice(0, cut), rows);
    if (fault !== null) return { cuts, fault: `cut at ${cut}: ${fault}` };
  }
  return { cuts, fault: null };
}

function cutFault(bytes: Uint8Array, text: string, rows: ReturnType<typeof flightNumbers>): string | null {
  const complete = text.split("\n").length - 2;
  const isInLine = text !== "" && !text.endsWith("\n");
  const { outcome, sums } = readSums(bytes);
  // A first row cut off is no row; of two rows neither clock nor sums can be said.
  if (complete < 2) return outcome.state === "read" && complete < 1 ? `read ${complete} rows` : null;
  if (sums === null) return outcome.state;
  if (sums.log.rows !== complete) return `${sums.log.rows} rows, not ${complete}`;
  const isTold = sums.log.notices.some((notice) => notice.code === "last-line-cut");
  if (isTold !== isInLine) return isTold ? "told of no cut" : "silent";
  const expected = exactSums(rows.slice(0, complete));
  const isEqual = Math.abs(sums.chargeMah - expected.chargeMah) <= 1e-9 * Math.max(1, expected.chargeMah);
  return isEqual ? null : `${sums.chargeMah} mAh, not ${expected.chargeMah}`;
}
