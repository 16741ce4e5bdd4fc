const PLAIN = /^[\w@%+=:,./-][\w@%+=:,./#-]*$/;

/** A word as it must be typed in a shell: quoted where it holds a space or a sign of the shell. */
export function shellWord(word: string): string {
  return PLAIN.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`;
}

/** A command line ready to paste. */
export function commandLine(words: readonly string[]): string {
  return ["tallywatt", ...words.map(shellWord)].join(" ");
}

/**
 * The option words of a call with those of a new answer put in: an answer to the same question, as another
 * --unit of the same channel or another --cells, takes the place of the old one. `answer`: "--unit time=ms".
 */
export function answeredWords(given: readonly string[], answer: string): readonly string[] {
  const news = pairsOf(answer.split(" "));
  const settled = new Set(news.map(keyOf));
  return [...pairsOf(given).filter((pair) => !settled.has(keyOf(pair))), ...news].flat();
}

type Pair = readonly string[];

function pairsOf(words: readonly string[]): readonly Pair[] {
  const pairs: string[][] = [];
  for (const word of words) {
    const last = pairs.at(-1);
    if (word.startsWith("--") || last === undefined) pairs.push([word]);
    else last.push(word);
  }
  return pairs;
}

/** "--unit time" of "--unit time=ms": what a second such option would answer again. */
function keyOf([option = "", value = ""]: Pair): string {
  const isPerChannel = option === "--unit" || option === "--column";
  return isPerChannel ? `${option} ${value.split("=")[0]}` : option;
}
