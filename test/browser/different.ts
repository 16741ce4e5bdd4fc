/** Two engines' Math.exp differ in the last bit, and what is solved from it amplifies that. */
const CLOSE = 1e-9;

/** The paths at which two results differ: numbers by more than the engines', all else at all. */
export function different(one: unknown, other: unknown, path = ""): readonly string[] {
  if (typeof one === "number" && typeof other === "number") {
    const isClose = Math.abs(one - other) <= CLOSE * Math.max(Math.abs(one), Math.abs(other));
    return isClose ? [] : [`${path}: ${one} and ${other}`];
  }
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) {
    return one === other ? [] : [`${path}: ${String(one)} and ${String(other)}`];
  }
  const keys = [...new Set([...Object.keys(one), ...Object.keys(other)])];
  const at = (value: object, key: string): unknown => (value as Readonly<Record<string, unknown>>)[key];
  return keys.flatMap((key) => different(at(one, key), at(other, key), `${path}/${key}`));
}
