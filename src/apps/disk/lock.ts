import lockfile from "proper-lockfile";
import { LONGEST_WAIT_S, LockBusyError, STALE_LOCK_S } from "./lockFacts.ts";

const FIRST_RETRY_MS = 20;
const LONGEST_RETRY_MS = 500;
/** How long to wait in silence before saying why. */
const QUIET_MS = 1000;

/**
 * Runs `work` while holding the folder's lock. A lock left by a program that was killed ends by itself
 * after STALE_LOCK_S; `onWait` is called once when the wait becomes noticeable.
 */
export async function withLock<Result>(
  folder: string,
  onWait: (message: string) => void,
  work: () => Promise<Result>,
): Promise<Result> {
  const release = await acquire(folder, onWait);
  try {
    return await work();
  } finally {
    await release();
  }
}

async function acquire(folder: string, onWait: (message: string) => void): Promise<() => Promise<void>> {
  const startedMs = Date.now();
  let retryMs = FIRST_RETRY_MS;
  let isSaid = false;
  for (;;) {
    try {
      return await lockfile.lock(folder, { stale: STALE_LOCK_S * 1000, realpath: false });
    } catch (error) {
      if (!isHeld(error)) throw error;
    }
    const waitedMs = Date.now() - startedMs;
    if (waitedMs > LONGEST_WAIT_S * 1000) throw new LockBusyError();
    if (waitedMs > QUIET_MS && !isSaid) {
      onWait(
        `waiting: another program is changing this logbook; a lock left by one that died ends after ${STALE_LOCK_S} s`,
      );
      isSaid = true;
    }
    await new Promise((resolve) => setTimeout(resolve, retryMs * (0.5 + Math.random())));
    retryMs = Math.min(retryMs * 1.5, LONGEST_RETRY_MS);
  }
}

function isHeld(error: unknown): boolean {
  return error instanceof Error && "code" in error && error.code === "ELOCKED";
}
