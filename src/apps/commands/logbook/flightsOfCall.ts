import {
  type BookFiles,
  type Digest,
  type NamedFlight,
  namedFlights,
  whyUnknown,
} from "../../../season/logbook/index.ts";
import { EXIT } from "../exitCodes.ts";
import { Failure } from "../failure.ts";

/** The flights that a call names, read from their own files. Throws a Failure for one that is not there or damaged. */
export function flightsOfCall(
  names: readonly string[],
  files: BookFiles,
  digest: Digest,
): readonly NamedFlight[] {
  const named = namedFlights(names, files, digest);
  if (named.state === "unusable") throw new Failure(EXIT.unusable, named.why);
  return named.flights;
}

/** Throws a Failure with the nearest name when the book has no such flight. */
export function assertThere(name: string, files: BookFiles): void {
  const why = whyUnknown(name, files);
  if (why !== null) throw new Failure(EXIT.unusable, why);
}
