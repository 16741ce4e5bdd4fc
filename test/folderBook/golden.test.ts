import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { describe, expect, it } from "vitest";
import { verifyFolder } from "../../src/apps/folderBook/index.ts";
import { BookMachine } from "../commands/bookMachine.ts";
import { BOOK } from "./bookDisk.ts";
import { MemoryDisk } from "./memoryDisk.ts";

const FOLDER = join(import.meta.dirname, "golden");

/** A logbook as an earlier release left it. Releases add a folder here; none is ever written anew. */
function goldenBook(version: string): Readonly<Record<string, Uint8Array>> {
  const folder = join(FOLDER, version);
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  return Object.fromEntries(
    files.map((one) => {
      const path = join(one.parentPath, one.name);
      return [`book/${relative(folder, path)}`, new Uint8Array(readFileSync(path))];
    }),
  );
}

/** Charges by trapezoid over the two logs, worked out apart from the program: 733.94 and 851.17 mAh. */
describe.each(readdirSync(FOLDER))("a logbook of format %s", (version) => {
  it("opens whole, with the same numbers", async () => {
    const machine = new BookMachine(goldenBook(version));
    const flights = await machine.json<{
      flights: { flight: string; measures: Record<string, { value: number }> }[];
    }>("list");
    expect(
      flights.flights.map(({ flight, measures }) => [
        flight,
        measures.chargeUsedMah?.value,
        measures.peakCurrentA?.value,
      ]),
    ).toEqual([
      ["2026-06-14-1", 733.9444444444441, 48],
      ["plain", 851.1666666666663, 56],
    ]);
    const disk = new MemoryDisk(
      new Map(
        Object.entries(goldenBook(version)).map(([path, bytes]) => [BOOK.replace(/book$/, path), bytes]),
      ),
    );
    // An index of an earlier kind is no damage: it is made again.
    expect(verifyFolder(disk, BOOK).problems.filter(({ isDamage }) => isDamage)).toEqual([]);
  });

  it("takes changes and undoes the last one of its own release", async () => {
    const machine = new BookMachine(goldenBook(version));
    expect(await machine.ok("undo --dry-run")).toContain("edited plain");
    await machine.ok("edit plain --pack C");
    await machine.ok("recheck");
    expect(await machine.ok("verify")).toContain("The logbook is whole: 2 flights, 2 logs");
  });
});
