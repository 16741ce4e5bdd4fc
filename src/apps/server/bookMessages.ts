import type { FileChange } from "../../season/logbook/index.ts";

/** Addresses of the book; a log's name follows LOGS. */
export const BOOK = "/book";
export const LOGS = "/book/logs/";

/** Answer to GET BOOK?at=STAMP: 204 where the book still has that stamp, else 200 with this. */
export interface StateMessage {
  readonly stamp: string;
  /** The folder as the command names it. */
  readonly folder: string;
  /** Path to text; the index among them where it fits. */
  readonly files: Readonly<Record<string, string>>;
}

/**
 * Body of POST BOOK: made wholly, or not at all and answered 409 when the book has not this stamp any more. Logs
 * are put before.
 */
export interface ChangeMessage {
  readonly stamp: string;
  readonly files: readonly FileChange[];
  readonly index: string | null;
  readonly dropLogs: readonly string[];
}

/** Answer to a change that was made: the stamp that the book has now if nobody else changed it since. */
export interface ChangedMessage {
  readonly stamp: string;
}

/** Answer with a status of 400 and more. */
export interface FaultMessage {
  readonly fault: string;
}

/** Largest body of a change, bytes; a book of some thousand flights, all changed at once, stays below. */
export const MOST_CHANGE_BYTES = 128 * 1024 * 1024;
