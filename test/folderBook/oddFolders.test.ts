import { beforeAll, describe, expect, it } from "vitest";
import { sha256Of } from "../../src/apps/disk/index.ts";
import { CannotChangeError, folderStore, JournalDamagedError, verifyFolder } from "../../src/apps/folderBook/index.ts"; // biome-ignore format: one door
import type { BookChange, BookFiles, Store } from "../../src/season/logbook/index.ts";
import { BOOK, diskWithBook, type Files, runOn } from "./bookDisk.ts";
import { MemoryDisk } from "./memoryDisk.ts";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const NOTHING: BookChange<null> = { logs: [], files: [], index: null, dropLogs: [], result: null };
const storeOn = (fileSystem: MemoryDisk): Store =>
  folderStore({ folder: BOOK, fileSystem, onWait: () => undefined });
const flightsIn = (files: BookFiles) => [...files.keys()].filter((path) => path.startsWith("flights/"));

let book: Files;
beforeAll(async () => {
  book = (await runOn(await diskWithBook(2), "edit 2026-05-01-1 --note x")).disk.files();
});

/** The book with files changed: null takes one away. */
function changed(changes: Readonly<Record<string, string | Uint8Array | null>>): MemoryDisk {
  const files = new Map(book);
  for (const [path, content] of Object.entries(changes)) {
    if (content === null) files.delete(`${BOOK}/${path}`);
    else files.set(`${BOOK}/${path}`, typeof content === "string" ? bytes(content) : content);
  }
  return new MemoryDisk(files);
}

function journalOf(changes: unknown, checksum = sha256Of(JSON.stringify(changes))): string {
  return JSON.stringify({ changes, checksum });
}

const problemsOf = (disk: MemoryDisk) =>
  verifyFolder(disk, BOOK).problems.map(({ path, isDamage }) => [path, isDamage]);

describe("the record of an unfinished change", () => {
  const remove = [{ path: "flights/2026-05-02-1.json", text: null }];

  it("is laid over the files for a reader, and finished by the next change", async () => {
    const disk = changed({ "journal.json": journalOf(remove) });
    const seen = await storeOn(disk).read((files) => ({
      flights: flightsIn(files),
      gone: files.get("flights/2026-05-02-1.json"),
      size: files.size,
      has: files.has("flights/2026-05-02-1.json"),
    }));
    expect(seen).toMatchObject({ flights: ["flights/2026-05-01-1.json"], gone: undefined, has: false });
    expect(disk.files().has(`${BOOK}/flights/2026-05-02-1.json`)).toBe(true);
    await storeOn(disk).change(() => NOTHING);
    expect(disk.files().has(`${BOOK}/flights/2026-05-02-1.json`)).toBe(false);
    expect(disk.files().has(`${BOOK}/journal.json`)).toBe(false);
  });

  it.each([
    ["cut", journalOf(remove).slice(0, 40)],
    ["no list", JSON.stringify({ changes: "x", checksum: sha256Of('"x"') })],
    ["of another checksum", journalOf(remove, "0")],
  ])("that is damaged (%s) changes nothing, is refused by a change and named by verify", async (_, text) => {
    const disk = changed({ "journal.json": text });
    expect(await storeOn(disk).read((files) => flightsIn(files).length)).toBe(2);
    const before = disk.files();
    await expect(storeOn(disk).change(() => NOTHING)).rejects.toThrow(JournalDamagedError);
    expect(disk.files()).toEqual(before);
    expect(problemsOf(disk)).toContainEqual(["journal.json", true]);
  });

  it("never reaches out of the book's folder", async () => {
    const outside = [{ path: "../owned.json", text: "x" }];
    const disk = changed({ "journal.json": journalOf(outside) });
    await expect(storeOn(disk).change(() => NOTHING)).rejects.toThrow();
    const direct = new MemoryDisk(book);
    const change = { ...NOTHING, files: [{ path: "flights/../../owned.json", text: "x" }] };
    await expect(storeOn(direct).change(() => change)).rejects.toThrow(CannotChangeError);
    for (const each of [disk, direct]) {
      expect([...each.files().keys()].filter((path) => !path.startsWith(`${BOOK}/`))).toEqual(
        [...book.keys()].filter((path) => !path.startsWith(`${BOOK}/`)),
      );
    }
  });
});

describe("a reader while the book changes", () => {
  it("reads again, and never half of each", async () => {
    const disk = new MemoryDisk(book);
    let reads = 0;
    const seen = await storeOn(disk).read((files) => {
      reads += 1;
      const flights = flightsIn(files).length;
      if (reads === 1) put(disk, "undo.json", "{}");
      return flights;
    });
    expect([reads, seen]).toEqual([2, 2]);
  });

  it("reads again when a file was gone before it came to it, and throws what stays wrong", async () => {
    const disk = new MemoryDisk(book);
    let reads = 0;
    const seen = await storeOn(disk).read((files) => {
      reads += 1;
      if (reads === 1) {
        disk.unlink(`${BOOK}/flights/2026-05-02-1.json`);
        put(disk, "undo.json", "{}");
        for (const [path] of files) if (path.endsWith("02-1.json")) throw new Error("half read");
        throw new Error(`gone: ${[...files.values()].length}`);
      }
      return [...files].filter(([path]) => path.startsWith("flights/")).length;
    });
    expect([reads, seen]).toEqual([2, 1]);
    await expect(storeOn(disk).read(() => JSON.parse("{"))).rejects.toThrow(SyntaxError);
  });

  it("waits for its turn when the changes do not end", async () => {
    const disk = new MemoryDisk(book);
    let reads = 0;
    const seen = await storeOn(disk).read((files) => {
      reads += 1;
      if (reads <= 20) put(disk, "undo.json", `{"n":${reads}}`);
      return flightsIn(files).length;
    });
    expect([reads, seen]).toEqual([21, 2]);
  });
});

/** Another program writes a file of the book. */
function put(disk: MemoryDisk, path: string, text: string): void {
  const descriptor = disk.openForWriting(`${BOOK}/${path}`);
  disk.write(descriptor, bytes(text));
  disk.close(descriptor);
}

describe("the index of a folder", () => {
  it("is not trusted after a flight of the same size changed", () => {
    const path = `flights/2026-05-02-1.json`;
    const disk = new MemoryDisk(book);
    expect(problemsOf(disk)).toEqual([]);
    put(disk, path, new TextDecoder().decode(book.get(`${BOOK}/${path}`)).replace("20", "21"));
    expect(problemsOf(disk)).toContainEqual(["index.txt", false]);
  });

  it("does not mind what else lies in the folder of flights", () => {
    expect(problemsOf(changed({ "flights/readme.txt": "mine" }))).toEqual([]);
  });

  it("is dropped, not kept old, by a change that brings none", async () => {
    const disk = new MemoryDisk(book);
    const path = "flights/2026-05-02-1.json";
    await storeOn(disk).change(() => ({ ...NOTHING, files: [{ path, text: null }] }));
    expect(disk.files().has(`${BOOK}/index.txt`)).toBe(false);
    expect(disk.files().has(`${BOOK}/${path}`)).toBe(false);
  });
});

describe("verify", () => {
  const log = () => [...book.keys()].find((path) => path.startsWith(`${BOOK}/logs/`))!.slice(BOOK.length + 1);

  it("names a log that is missing and one that changed", () => {
    expect(problemsOf(changed({ [log()]: null }))).toContainEqual([log(), true]);
    expect(problemsOf(changed({ [log()]: "time,volts\n" }))).toContainEqual([log(), true]);
  });

  it("names the book's own file when it is missing, not in a folder that holds no book", () => {
    expect(problemsOf(changed({ "book.json": null }))).toContainEqual(["book.json", true]);
    expect(verifyFolder(new MemoryDisk(), BOOK)).toEqual({ flights: 0, logs: 0, problems: [] });
  });

  it("notes a log that nothing needs", () => {
    expect(problemsOf(changed({ "logs/else.csv": "x" }))).toEqual([["logs/else.csv", false]]);
  });
});

describe("a log that is there already", () => {
  it("is not written again, one of the same size with other bytes is", async () => {
    const path = [...book.keys()].find((each) => each.startsWith(`${BOOK}/logs/`))!;
    const kept = book.get(path)!;
    for (const [content, isWritten] of [
      [kept, false],
      [kept.map((byte, at) => (at === 0 ? byte ^ 1 : byte)), true],
    ] as const) {
      const disk = new MemoryDisk(book);
      await storeOn(disk).change(() => ({
        ...NOTHING,
        logs: [{ path: path.slice(BOOK.length + 1), bytes: content }],
      }));
      expect(disk.log.includes(`rename ${path}`)).toBe(isWritten);
      expect(disk.files().get(path)).toEqual(content);
    }
  });
});
