/** The text with a large first letter. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The text with a small first letter, for going on with a sentence. */
export function uncapital(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
