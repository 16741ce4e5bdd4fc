/** What watching needs of the machine. */
export interface Watched {
  /** The logs of the folder with their sizes. */
  readonly sizes: () => ReadonlyMap<string, number>;
  readonly take: (log: string) => Promise<void>;
  /** Waits for one turn. */
  readonly wait: () => Promise<void>;
  /** True when watching shall end. */
  readonly isOver: () => boolean;
}

/** A log that has kept its size for so many turns has stopped growing. */
const QUIET_TURNS = 2;

/**
 * Looks at a folder once a turn and takes each log, those already there too, once it is not empty and has
 * not grown for two turns. A log that grows again is taken again.
 */
export async function watchFolder({ sizes, take, wait, isOver }: Watched): Promise<void> {
  const seen = new Map<string, { size: number; turns: number; taken: number | null }>();
  while (!isOver()) {
    for (const [log, size] of sizes()) {
      const last = seen.get(log);
      const turns = last !== undefined && last.size === size ? last.turns + 1 : 0;
      const taken = last?.taken ?? null;
      const isReady = size > 0 && turns >= QUIET_TURNS && taken !== size;
      seen.set(log, { size, turns, taken: isReady ? size : taken });
      if (isReady) await take(log);
    }
    await wait();
  }
}
