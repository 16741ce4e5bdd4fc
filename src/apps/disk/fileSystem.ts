import type { LogBytes } from "../../log/reading/index.ts";

/** A file or folder as it is: its size in bytes, the time of its last change. */
export interface FileState {
  readonly isFolder: boolean;
  readonly size: number;
  readonly modifiedMs: number;
}

/**
 * Every file call that the folder store makes, and no other: so that tests can fail each of them, cut
 * them short and replay what a power loss leaves. Paths are absolute. Calls throw Node's own errors.
 */
export interface FileSystem {
  /** Opens for writing, created or emptied; gives a descriptor. */
  openForWriting(path: string): number;
  /** Opens a file or folder for fsync only. */
  openForSync(path: string): number;
  /** Writes a part and says how many bytes were taken: may be fewer than asked. */
  write(descriptor: number, bytes: Uint8Array): number;
  fsync(descriptor: number): void;
  close(descriptor: number): void;
  rename(from: string, to: string): void;
  unlink(path: string): void;
  makeFolder(path: string): void;
  /** Null when there is no such file. */
  read(path: string): Uint8Array | null;
  /** The bytes of a file a part at a time, for files too large to hold; null when there is no such file. */
  parts(path: string): LogBytes | null;
  /** Names in a folder, sorted; empty when there is no such folder. */
  list(path: string): readonly string[];
  /** Size in bytes, or null when there is no such file. */
  size(path: string): number | null;
  /** Null when there is no such file or folder. */
  state(path: string): FileState | null;
  /**
   * Runs `work` while no other program changes this folder; `onWait` is called once when the wait for
   * another one becomes noticeable.
   */
  alone<Result>(
    folder: string,
    onWait: (message: string) => void,
    work: () => Promise<Result>,
  ): Promise<Result>;
}
