import { withinFolder } from "../disk/index.ts";
import { PortTakenError, startPageServer } from "../server/index.ts";
import type { Call } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import { Failure, usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import { bookFolder } from "./logbook/bookFolder.ts";
import { openBook } from "./logbook/openBook.ts";
import { numberOption } from "./optionValues.ts";
import { pageSentences } from "./pageSentences.ts";
import { inputSentences } from "./sentences.ts";
import type { Talk } from "./talk.ts";

const PORTS = { low: 1024, high: 65_535, unit: "as a port", example: "8123", isWhole: true } as const;

/** Serves the page with the logbook of a call until the user ends it. Opens no browser. */
export async function servePage(page: string, call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const port = numberOption(call, "port", PORTS) ?? 0;
  const folder = bookFolder(call.text("book"), io);
  // A request comes from a browser: it must not reach through a link what the folder does not hold.
  const store = openBook(call, { ...io, files: withinFolder(io.files, folder) }, talk);
  // A logbook that cannot be used is told before the page is opened.
  await store.read(() => null);
  const ended = io.interrupted();
  const sentenceOf = (error: unknown) => (error instanceof Failure ? error.message : null);
  const onBug = (error: unknown) => talk.say(inputSentences.ownBug(String(error)));
  const server = await startPageServer({ page, store, folder, port, sentenceOf, onBug }).catch(
    (error: unknown) => {
      throw error instanceof PortTakenError ? usageFailure(pageSentences.portTaken(port)) : error;
    },
  );
  talk.say(pageSentences.serves(folder));
  talk.data(server.address);
  talk.say(pageSentences.howToEnd());
  await ended;
  await server.stop();
  talk.say(pageSentences.ended());
  return EXIT.interrupted;
}
