import {
  type Added,
  type AddRequest,
  type KeptFlight,
  planAdd,
  readKeptFlights,
} from "../../season/logbook/index.ts";
import { sha256Of } from "../disk/index.ts";

/** A logbook in memory: the demo's flights are kept as the logbook keeps them, and nothing is written. */
export class DemoBook {
  private readonly files = new Map<string, string>();
  private readonly release: string;

  constructor(release: string) {
    this.release = release;
  }

  /** Adds the flights of one checked log. */
  add(request: AddRequest): Added {
    const frame = { digest: sha256Of, release: this.release, run: "demo" };
    const { files, result } = planAdd(this.files, frame, request);
    for (const { path, text } of files) {
      if (text === null) this.files.delete(path);
      else this.files.set(path, text);
    }
    return result;
  }

  /** Every flight, in the order of flying. */
  flights(): readonly KeptFlight[] {
    return readKeptFlights(this.files, sha256Of).entries;
  }
}
