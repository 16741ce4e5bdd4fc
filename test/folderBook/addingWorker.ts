// Adds logs to a book one change at a time and says each once it is on disk: a program that is cheap to start, for
// kills and races. The flight of each is the model's; the plan, the store, the lock and the disk are the command's own.
// Run bundled: node addingWorker.js BOOK MODEL LOG...
import { readFileSync } from "node:fs";
import { nodeFileSystem, sha256Of } from "../../src/apps/disk/index.ts";
import { folderStore } from "../../src/apps/folderBook/index.ts";
import { entryText, flightPath, type KeptFlight, planTakeIn } from "../../src/season/logbook/index.ts";

const [book = "", model = "", ...logs] = process.argv.slice(2);
const entry = JSON.parse(readFileSync(model, "utf8")) as KeptFlight & { checksum?: string };
delete entry.checksum;
const store = folderStore({ folder: book, fileSystem: nodeFileSystem, onWait: () => {} });
const frame = { digest: sha256Of, release: "0.0.0", run: String(process.pid) };

process.stdout.write("ready\n");
for (const file of logs) {
  const bytes = new Uint8Array(readFileSync(file));
  const flight = file.replace(".csv", "");
  const log = { ...entry.log, path: `logs/${file}`, file, sha256: sha256Of(bytes) };
  const text = entryText({ ...entry, flight, log }, sha256Of);
  const other = new Map([[flightPath(flight), text]]);
  await store.change((files) => planTakeIn(files, frame, other, new Map([[log.path, bytes]])));
  process.stdout.write(`added ${file}\n`);
}
