const LETTERS = "abcdefghijklmnopqrstuvwxyz";

/** Single-edit slips of a word: a letter left out, doubled, replaced, and two neighbours swapped. */
export function singleEditTypos(word: string): readonly string[] {
  const places = Array.from({ length: word.length }, (_, index) => index);
  const typos = places.flatMap((at) => {
    const before = word.slice(0, at);
    const after = word.slice(at + 1);
    const letter = word.charAt(at);
    const other = LETTERS.charAt((LETTERS.indexOf(letter.toLowerCase()) + 7) % LETTERS.length);
    const next = word.charAt(at + 1);
    return [
      before + after,
      before + letter + letter + after,
      before + other + after,
      ...(next === "" ? [] : [before + next + letter + word.slice(at + 2)]),
    ];
  });
  return [...new Set(typos)].filter((typo) => typo !== word && typo !== "");
}

/** Share of typos for which `suggest` gives the right word, with the words it got wrong. */
export function rightShare(
  words: readonly string[],
  suggest: (typo: string, word: string) => string | null,
): { readonly share: number; readonly wrong: readonly string[]; readonly count: number } {
  const known = new Set(words);
  const cases = words.flatMap((word) => singleEditTypos(word).map((typo) => [typo, word] as const));
  const unambiguous = cases.filter(([typo]) => !known.has(typo));
  const wrong = unambiguous.filter(([typo, word]) => suggest(typo, word) !== word);
  return {
    share: 1 - wrong.length / unambiguous.length,
    wrong: wrong.map(([typo, word]) => `${typo} for ${word}`),
    count: unambiguous.length,
  };
}
