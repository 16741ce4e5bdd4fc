/**
 * The engines of Node and of a browser round exp, log, pow and their like to other last digits, at most one; sums,
 * products and roots are the same in both. A fit that is solved from them amplifies that.
 */
const ENGINES = 1e-12;
const ENGINES_IN_FITS = 2e-10;
const FITTED = /Resistance|TimeConstant|RisePerA2|HotDay|whyOff|slope|crossing|point/;

/** True for two numbers that differ by no more than two engines do. `name` says of what they are. */
export function isAlike(
  name: string,
  one: number | null | undefined,
  other: number | null | undefined,
): boolean {
  if (typeof one !== "number" || typeof other !== "number") return one === other;
  const most = FITTED.test(name) ? ENGINES_IN_FITS : ENGINES;
  return Math.abs(one - other) <= most * Math.max(Math.abs(one), Math.abs(other));
}

/** The paths at which two results differ: numbers by more than the engines', all else at all. */
export function different(one: unknown, other: unknown, path = ""): readonly string[] {
  if (typeof one === "number" && typeof other === "number") {
    return isAlike(path, one, other) ? [] : [`${path}: ${one} and ${other}`];
  }
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) {
    return one === other ? [] : [`${path}: ${String(one)} and ${String(other)}`];
  }
  const keys = [...new Set([...Object.keys(one), ...Object.keys(other)])];
  const at = (value: object, key: string): unknown => (value as Readonly<Record<string, unknown>>)[key];
  return keys.flatMap((key) => different(at(one, key), at(other, key), `${path}/${key}`));
}
