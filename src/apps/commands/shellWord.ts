const PLAIN = /^[\w@%+=:,./-][\w@%+=:,./#-]*$/;

/** A word as it must be typed in a shell: quoted where it holds a space or a sign of the shell. */
export function shellWord(word: string): string {
  return PLAIN.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`;
}

/** A command line ready to paste. */
export function commandLine(words: readonly string[]): string {
  return ["tallywatt", ...words.map(shellWord)].join(" ");
}
