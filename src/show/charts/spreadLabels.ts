/**
 * Moves label centres apart so that neighbours keep `apart` between them and all stay in 0..100, as
 * close to where they belong as a forward and a backward pass get them. Order is kept. Percent of the axis.
 */
export function spreadLabels(wanted: readonly number[], apart: number): number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
  const placed = [...wanted];
  let floor = apart / 2;
  for (const index of order) {
    placed[index] = Math.max(placed[index] ?? 0, floor);
    floor = (placed[index] ?? 0) + apart;
  }
  let ceiling = 100 - apart / 2;
  for (const index of order.reverse()) {
    placed[index] = Math.min(placed[index] ?? 0, ceiling);
    ceiling = (placed[index] ?? 0) - apart;
  }
  return placed;
}
