/** Keeps seven significant digits: enough for any comparison, short enough to read. */
function shortened(_key: string, value: unknown): unknown {
  return typeof value === "number" && !Number.isInteger(value) ? Number(value.toPrecision(7)) : value;
}

/** JSON as the formatter of this project leaves it: two spaces, lists of numbers on one line. */
export function jsonText(value: unknown): string {
  const text = JSON.stringify(value, shortened, 2);
  const oneLine = text.replace(/\[([\s\d.,-]*)\]/g, (_all, inside: string) => {
    return `[${inside.trim().replace(/\s*,\s*/g, ", ")}]`;
  });
  return `${oneLine}\n`;
}
