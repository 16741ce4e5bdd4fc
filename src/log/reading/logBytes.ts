/**
 * The bytes of a log: in memory, or on a disk and read a part at a time, so that a long log need not be held.
 * A part is good until the next one is asked for.
 */
export interface LogBytes {
  readonly length: number;
  subarray(start: number, end: number): Uint8Array;
}
