/** One file of a change: its new text, or null to delete it. Paths are relative to the book, with "/". */
export interface FileChange {
  readonly path: string;
  readonly text: string | null;
}

/** A log kept byte for byte under a path of the book. */
export interface LogFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** What one command changes: the logs are kept first, then all files change together or not at all. */
export interface BookChange<Result> {
  readonly logs: readonly LogFile[];
  readonly files: readonly FileChange[];
  /** The index of the book after the change; a store may lose it, since it can always be rebuilt. */
  readonly index: string | null;
  /** Logs that nothing in the book refers to any more: deleted once the change is made. */
  readonly dropLogs: readonly string[];
  readonly result: Result;
}

/**
 * Every small text file of a book by its path; logs are not among them. The index is there only when it
 * fits the flights of the book. A text is read when it is asked for.
 */
export type BookFiles = ReadonlyMap<string, string>;

/**
 * Where a logbook lives: a folder on disk or a browser's own storage. Only whole changes are ever seen.
 */
export interface Store {
  /** Runs `work` on the book as it is; again from the start when it changed meanwhile. Writes nothing. */
  read<Result>(work: (files: BookFiles) => Result): Promise<Result>;
  /** The bytes of a kept log, or null. */
  readLog(path: string): Promise<Uint8Array | null>;
  /**
   * Runs `work` on the newest book while no one else can change it and makes its change. When it
   * resolves the change is on disk; when it rejects the book is as before or, after a crash in the
   * middle, as after: never in between.
   */
  change<Result>(
    work: (files: BookFiles) => BookChange<Result> | Promise<BookChange<Result>>,
  ): Promise<Result>;
}
