import { dirname } from "node:path";
import type { FileState, FileSystem } from "../../src/apps/disk/index.ts";

/** An effect that the disk may lose until the matching fsync. */
type Effect =
  | { readonly kind: "data"; readonly inode: number; readonly bytes: Uint8Array }
  | { readonly kind: "name"; readonly folder: string; readonly path: string; readonly inode: number | null };

export class PowerLost extends Error {}

export interface Fault {
  /** Fails from this call on (counted from 0). */
  readonly atCall: number;
  readonly code: "EIO" | "ENOSPC" | "EACCES" | "SHORT" | "POWER";
  readonly isForEver: boolean;
}

/** Where the power was lost: what is on the platter for sure, and what was on its way. */
export interface CrashState {
  readonly durableData: ReadonlyMap<number, Uint8Array>;
  readonly durableNames: ReadonlyMap<string, number>;
  readonly unsynced: readonly Effect[];
}

/**
 * A disk in memory that forgets what was not fsynced. File data become durable by fsync of the file,
 * names (create, rename, unlink) by fsync of their folder; folders themselves always exist.
 */
export class MemoryDisk implements FileSystem {
  calls = 0;
  /** From here on nothing that the program does reaches the disk. */
  isPowerLost = false;
  readonly log: string[] = [];
  private nextInode = 1;
  private readonly data = new Map<number, Uint8Array>();
  private readonly modified = new Map<number, number>();
  private readonly names = new Map<string, number>();
  private readonly durableData = new Map<number, Uint8Array>();
  private readonly durableNames = new Map<string, number>();
  private unsynced: Effect[] = [];
  private readonly open = new Map<number, number | string>();
  private nextDescriptor = 100;

  constructor(
    files: ReadonlyMap<string, Uint8Array> = new Map(),
    private readonly fault: Fault | null = null,
  ) {
    for (const [path, bytes] of files) {
      const inode = this.nextInode++;
      for (const map of [this.data, this.durableData]) map.set(inode, bytes);
      for (const map of [this.names, this.durableNames]) map.set(path, inode);
    }
  }

  /** Every file by path, as a program sees it. */
  files(): ReadonlyMap<string, Uint8Array> {
    return new Map([...this.names].map(([path, inode]) => [path, this.data.get(inode) ?? new Uint8Array()]));
  }

  /** What another program makes of the disk meanwhile, durably. */
  become(files: ReadonlyMap<string, Uint8Array>): void {
    for (const map of [this.names, this.durableNames]) map.clear();
    for (const [path, bytes] of files) {
      const inode = this.nextInode++;
      for (const map of [this.data, this.durableData]) map.set(inode, bytes);
      for (const map of [this.names, this.durableNames]) map.set(path, inode);
    }
    this.unsynced = [];
  }

  crash(): CrashState {
    return {
      durableData: new Map(this.durableData),
      durableNames: new Map(this.durableNames),
      unsynced: [...this.unsynced],
    };
  }

  private step(name: string): boolean {
    const call = this.calls++;
    this.log.push(name);
    const { fault } = this;
    if (fault === null || call < fault.atCall || (!fault.isForEver && call > fault.atCall)) return false;
    if (fault.code === "POWER") {
      this.isPowerLost = true;
      throw new PowerLost(`power lost at call ${call}`);
    }
    if (fault.code === "SHORT") return true;
    throw Object.assign(new Error(`${fault.code} at call ${call}`), { code: fault.code });
  }

  openForWriting(path: string): number {
    this.step(`open ${path}`);
    const inode = this.nextInode++;
    this.data.set(inode, new Uint8Array());
    this.names.set(path, inode);
    this.unsynced.push({ kind: "name", folder: dirname(path), path, inode });
    return this.descriptorOf(inode);
  }

  openForSync(path: string): number {
    this.step(`open folder ${path}`);
    return this.descriptorOf(path);
  }

  private descriptorOf(target: number | string): number {
    const descriptor = this.nextDescriptor++;
    this.open.set(descriptor, target);
    return descriptor;
  }

  write(descriptor: number, bytes: Uint8Array): number {
    const isShort = this.step("write");
    const inode = this.open.get(descriptor) as number;
    const taken = isShort ? Math.floor(bytes.length / 2) : bytes.length;
    const before = this.data.get(inode) ?? new Uint8Array();
    const after = new Uint8Array(before.length + taken);
    after.set(before);
    after.set(bytes.subarray(0, taken), before.length);
    this.data.set(inode, after);
    this.modified.set(inode, this.calls);
    this.unsynced.push({ kind: "data", inode, bytes: after });
    return taken;
  }

  fsync(descriptor: number): void {
    this.step("fsync");
    const target = this.open.get(descriptor);
    const isReached = (effect: Effect): boolean =>
      effect.kind === "data" ? effect.inode === target : effect.folder === target;
    for (const effect of this.unsynced.filter(isReached)) {
      apply(effect, this.durableData, this.durableNames);
    }
    this.unsynced = this.unsynced.filter((effect) => !isReached(effect));
  }

  close(descriptor: number): void {
    this.open.delete(descriptor);
  }

  rename(from: string, to: string): void {
    this.step(`rename ${to}`);
    const inode = this.inodeOf(from);
    this.names.delete(from);
    this.names.set(to, inode);
    this.unsynced.push({ kind: "name", folder: dirname(to), path: to, inode });
    this.unsynced.push({ kind: "name", folder: dirname(from), path: from, inode: null });
  }

  unlink(path: string): void {
    this.step(`unlink ${path}`);
    this.inodeOf(path);
    this.names.delete(path);
    this.unsynced.push({ kind: "name", folder: dirname(path), path, inode: null });
  }

  private inodeOf(path: string): number {
    const inode = this.names.get(path);
    if (inode === undefined) throw Object.assign(new Error(`ENOENT ${path}`), { code: "ENOENT" });
    return inode;
  }

  makeFolder(_path: string): void {
    this.step("makeFolder");
  }

  parts(path: string): Uint8Array | null {
    return this.read(path);
  }

  state(path: string): FileState | null {
    this.step(`state ${path}`);
    const inode = this.names.get(path);
    const data = inode === undefined ? undefined : this.data.get(inode);
    const modifiedMs = this.modified.get(inode ?? 0) ?? 0;
    if (data !== undefined) return { isFolder: false, size: data.length, modifiedMs };
    const isFolder = [...this.names.keys()].some((name) => name.startsWith(`${path}/`));
    return isFolder ? { isFolder, size: 0, modifiedMs } : null;
  }

  /** One program is always alone here. */
  alone<Result>(_folder: string, _onWait: unknown, work: () => Promise<Result>): Promise<Result> {
    return work();
  }

  read(path: string): Uint8Array | null {
    this.step(`read ${path}`);
    const inode = this.names.get(path);
    return inode === undefined ? null : (this.data.get(inode) ?? null);
  }

  list(path: string): readonly string[] {
    this.step(`list ${path}`);
    const prefix = `${path.replace(/\/$/, "")}/`;
    const below = [...this.names.keys()].filter((name) => name.startsWith(prefix));
    return [...new Set(below.map((name) => name.slice(prefix.length).split("/")[0] ?? ""))].sort();
  }

  size(path: string): number | null {
    this.step(`size ${path}`);
    const inode = this.names.get(path);
    return inode === undefined ? null : (this.data.get(inode)?.length ?? 0);
  }
}

function apply(effect: Effect, data: Map<number, Uint8Array>, names: Map<string, number>): void {
  if (effect.kind === "data") data.set(effect.inode, effect.bytes);
  else if (effect.inode === null) names.delete(effect.path);
  else names.set(effect.path, effect.inode);
}

/** Every set of files that can be found after the power came back (at most 2^`most` of them). */
export function* survivors(crash: CrashState, most = 7): Generator<ReadonlyMap<string, Uint8Array>> {
  const free = crash.unsynced.slice(-most);
  const kept = crash.unsynced.slice(0, -most);
  for (let choice = 0; choice < 2 ** free.length; choice += 1) {
    const data = new Map(crash.durableData);
    const names = new Map(crash.durableNames);
    for (const effect of kept) apply(effect, data, names);
    free.forEach((effect, index) => {
      if ((choice >> index) & 1) apply(effect, data, names);
    });
    yield new Map([...names].map(([path, inode]) => [path, data.get(inode) ?? new Uint8Array()]));
  }
}
