/** The last array handed out and given back; the collector may have it when memory is short. */
let kept: WeakRef<Float64Array> | null = null;
let isInUse = false;
/** A list of a few values more is no reason for another array. */
const ROOM = 64;

/**
 * Runs `work` on an array for its own use, with whatever it held before: it must write each value it reads, and keep
 * none of it. One array serves call after call, so that passes over a long log leave no garbage behind; a call inside
 * a call gets another.
 */
export function withScratch<Result>(length: number, work: (values: Float64Array) => Result): Result {
  if (isInUse) return work(new Float64Array(length));
  let values = kept?.deref();
  if (values === undefined || values.length < length) {
    values = new Float64Array(length + ROOM);
    kept = new WeakRef(values);
  }
  isInUse = true;
  try {
    return work(values.subarray(0, length));
  } finally {
    isInUse = false;
  }
}

/** The same of single precision. */
export function withSingleScratch<Result>(length: number, work: (values: Float32Array) => Result): Result {
  return withScratch(Math.ceil(length / 2), ({ buffer, byteOffset }) =>
    work(new Float32Array(buffer, byteOffset, length)),
  );
}
