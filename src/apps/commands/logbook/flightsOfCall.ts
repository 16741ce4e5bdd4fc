import { nearestWord } from "../../../base/words/index.ts";
import {
  type BookFiles,
  bookSentences,
  type Digest,
  flightPath,
  type KeptFlight,
  keptFlightAt,
} from "../../../season/logbook/index.ts";
import { EXIT } from "../exitCodes.ts";
import { Failure } from "../failure.ts";

/** A flight of the book with the text of its file. */
export interface NamedFlight {
  readonly entry: KeptFlight;
  readonly text: string;
}

/** The flights that a call names, read from their own files. Throws a Failure for one that is not there or damaged. */
export function flightsOfCall(
  names: readonly string[],
  files: BookFiles,
  digest: Digest,
): readonly NamedFlight[] {
  return [...new Set(names)].map((name) => {
    assertThere(name, files);
    const read = keptFlightAt(files, flightPath(name), digest);
    if (read.state === "damaged") {
      throw new Failure(EXIT.unusable, bookSentences.flightDamaged(name, read.why));
    }
    return { entry: read.entry, text: read.text };
  });
}

/** Throws a Failure with the nearest name when the book has no such flight. */
export function assertThere(name: string, files: BookFiles): void {
  if (files.has(flightPath(name))) return;
  const names = [...files.keys()].flatMap((path) => /^flights\/(.*)\.json$/.exec(path)?.[1] ?? []);
  throw new Failure(EXIT.unusable, bookSentences.flightUnknown(name, nearestWord(name, names)));
}
