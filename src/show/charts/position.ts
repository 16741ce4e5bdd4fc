/** Where `x` lies between `from` (0) and `to` (100), in percent. */
export function percentOf(x: number, from: number, to: number): number {
  return (100 * (x - from)) / (to - from);
}

/** A percentage as an SVG attribute. */
export function percentText(percent: number): string {
  return `${Number(percent.toFixed(2))}%`;
}

const LEANS = { left: "end", middle: "middle", right: "start" } as const;

/** Which way a label grows from its point: as it leans, but always staying inside the narrowest plot. */
export function anchorAt(percent: number, lean: keyof typeof LEANS = "middle"): "start" | "middle" | "end" {
  return percent < 24 ? "start" : percent > 76 ? "end" : LEANS[lean];
}

/** A time as a data attribute, to the millisecond. */
export function secondsText(seconds: number): string {
  return String(Number(seconds.toFixed(3)));
}
