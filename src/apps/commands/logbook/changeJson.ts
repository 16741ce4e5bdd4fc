/** The result of edit, remove and undo as JSON. */
export function changeJson(
  command: "edit" | "remove" | "undo",
  flights: readonly string[],
  dryRun: boolean,
): string {
  return JSON.stringify({ format: "tallywatt/change", version: 1, command, dryRun, flights }, null, 2);
}
