import * as fs from "node:fs";
import type { LogBytes } from "../../log/reading/index.ts";

const LEAST_BUFFER = 1 << 20;

/** A file read a part at a time into one buffer. Opened for each part, so that nothing is left open. */
export function filePartsOf(path: string): LogBytes {
  let buffer = new Uint8Array(0);
  return {
    length: fs.statSync(path).size,
    subarray: (start, end) => {
      if (buffer.length < end - start) buffer = new Uint8Array(Math.max(LEAST_BUFFER, end - start));
      const part = buffer.subarray(0, end - start);
      const descriptor = fs.openSync(path, "r");
      try {
        readFully(descriptor, part, start);
      } finally {
        fs.closeSync(descriptor);
      }
      return part;
    },
  };
}

function readFully(descriptor: number, part: Uint8Array, start: number): void {
  for (let read = 0; read < part.length; ) {
    const count = fs.readSync(descriptor, part, read, part.length - read, start + read);
    if (count === 0) throw new Error("the file became shorter while it was read");
    read += count;
  }
}
