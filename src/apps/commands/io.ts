import type { FileSystem } from "../disk/index.ts";

/** Everything of the machine that the commands may touch; tests hand in their own. */
export interface Io {
  readonly out: { write(text: string): void };
  readonly err: { write(text: string): void };
  readonly outIsTerminal: boolean;
  readonly errIsTerminal: boolean;
  /** How the user calls the program; "tallywatt" when not given. */
  readonly program?: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Folder that relative paths start from. */
  readonly workFolder: string;
  /** Folder of the installed package: package.json, schemas, fixtures. */
  readonly packageFolder: string;
  readonly files: FileSystem;
  /** Script of a thread that checks logs; without one all work is done on this thread. */
  readonly checkWorker?: string;
  /** All bytes of standard input. */
  readonly readInput: () => Promise<Uint8Array>;
  /** Lets signals and other events through between two pieces of work. */
  readonly pause: () => Promise<void>;
  /**
   * Resolves when the user asks the program to end (Ctrl-C); who waits for it ends what it began. Asked again, the
   * program ends at once.
   */
  readonly interrupted: () => Promise<void>;
}
