import type { ChangeFrame } from "./changeBook.ts";
import type { BookChange, BookFiles, Store } from "./store.ts";

/** A book at work: where it lives, and what its changes are signed with. */
export interface OpenedBook extends Pick<Store, "read" | "readLog"> {
  readonly frame: ChangeFrame;
  /** Makes the change that is planned from the newest files; the plan may run more than once. */
  change<Result>(plan: (files: BookFiles) => BookChange<Result>): Promise<Result>;
}
