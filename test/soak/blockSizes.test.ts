import { readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { describe, expect, it } from "vitest";
import { lineBlocks } from "../../src/log/reading/lines.ts";
import { TableBuilder } from "../../src/log/reading/table.ts";
import { seededRandom } from "../generator/random.ts";
import { sharedFolder, withShared } from "../support/shared.ts";
import { encoded, WRITTEN_ENCODINGS } from "./encodings.ts";
import { flightNumbers } from "./flightNumbers.ts";
import { plainTable, textOf } from "./logText.ts";
import { bothWaysTrial, contentOf, placeOf } from "./tables.ts";
import { mutatedOf } from "./underFire.ts";

const SIZES = [1, 2, 3, 7, 64, 1024, 65_536];
const WHOLE = 1 << 26;

/** The table of some bytes read `bytesAtOnce`, or null. */
function tableOf(bytes: Uint8Array, bytesAtOnce: number): unknown {
  const found = placeOf(bytes);
  if (found === null) return null;
  const { decoding, layout } = found;
  const builder = new TableBuilder(layout);
  for (const block of lineBlocks(bytes, decoding, bytesAtOnce)) builder.addBlock(block);
  return contentOf(builder.finished());
}

function expectSameTables(bytes: Uint8Array, sizes = SIZES): void {
  const whole = tableOf(bytes, WHOLE);
  for (const size of sizes) {
    const table = tableOf(bytes, size);
    if (!isDeepStrictEqual(table, whole)) expect(table, `${size} bytes at once`).toEqual(whole);
  }
}

describe("the size of the blocks that are read at once changes nothing", () => {
  it.each(WRITTEN_ENCODINGS)("in a log of degrees and crosses in %s", (encoding) => {
    const [header, ...rows] = plainTable(flightNumbers(seededRandom(1), 80), ",");
    const table = [header!.with(2, "ESC °C"), ...rows.map((cells) => [...cells, "\u{1f6e9} µ"])];
    expectSameTables(encoded(textOf([[...table[0]!, "note"], ...table.slice(1)], ";", "\r\r\n"), encoding));
  });

  it("nor does reading plain rows as numbers where a torn line brings a new header", () => {
    expect(bothWaysTrial(2039)).toBeNull();
  });

  it("in mutated logs", () => {
    for (let seed = 0; seed < 20; seed++) expectSameTables(mutatedOf(seed).bytes);
  });
});

const folder = sharedFolder();
const corpus = folder === null ? "" : resolve(folder, "corpus");
const files = folder === null ? [] : readdirSync(corpus).filter((name) => name.endsWith(".csv"));

describe.skipIf(folder === null)(withShared("nor in the corpus of bad logs"), () => {
  it.each(files)("%s", (name) => {
    const bytes = new Uint8Array(readFileSync(resolve(corpus, name)));
    // Blocks of few bytes are slow: the head of the file shows what they do.
    expectSameTables(bytes.subarray(0, 1500), SIZES.slice(0, 4));
    expectSameTables(bytes, SIZES.slice(bytes.length > 100_000 ? 6 : 4));
  });
});
