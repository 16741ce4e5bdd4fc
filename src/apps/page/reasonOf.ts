/** What a thrown value says. */
export function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
