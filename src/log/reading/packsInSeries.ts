import type { Candidate } from "./candidate.ts";
import { chooseUnit } from "./channelUnit.ts";

/** Words, besides numbers that follow each other, that tell two packs of one aircraft apart. */
const PAIRS: readonly (readonly [string, string])[] = [
  ["a", "b"],
  ["first", "second"],
  ["front", "rear"],
  ["front", "back"],
  ["left", "right"],
  ["upper", "lower"],
  ["top", "bottom"],
];
/** Volts of a full or nearly full cell at the start of a log. */
const CELL_V: readonly [number, number] = [3.3, 4.4];
/** A column that holds the sum of the two differs from it by less than this share. */
const SAME_SHARE = 0.03;

export interface SeriesPair {
  readonly first: Candidate;
  readonly second: Candidate;
  /** A column of the two together, where there is one. */
  readonly whole: Candidate | null;
}

/**
 * Two columns of pack volts whose headers differ by a number or a word of a pair only, and whose sum alone fits the
 * cells: two packs in series. Null where the cells are not known or each column alone fits them.
 */
export function packsInSeries(volts: readonly Candidate[], cells: number | null): SeriesPair | null {
  if (cells === null) return null;
  const live = volts.filter((each) => !each.isGiven && !each.isPerCell && !each.view.range.isDead);
  for (const first of live) {
    const second = live.find((each) => isPair(first.view.header, each.view.header));
    if (second === undefined) continue;
    const sumV = highV(first) + highV(second);
    const fits = (packV: number) => packV / cells >= CELL_V[0] && packV / cells <= CELL_V[1];
    if (!fits(sumV) || fits(highV(first)) || fits(highV(second))) continue;
    const others = live.filter((each) => each !== first && each !== second);
    const whole = others.find((each) => Math.abs(highV(each) / sumV - 1) < SAME_SHARE) ?? null;
    if (others.length > 0 && whole === null) continue;
    return { first, second, whole };
  }
  return null;
}

/** Nearly the highest volts of the column: those of the rested pack. */
function highV({ view }: Candidate): number {
  const unit = chooseUnit("packVoltage1", view, null, null);
  return "doubt" in unit ? Number.NaN : view.range.high99 * unit.unit.factor + unit.unit.offset;
}

function isPair(one: string, other: string): boolean {
  const [words, others] = [tokens(one), tokens(other)];
  const differing = words.flatMap((_, at) => (words[at] === others[at] ? [] : [at]));
  const at = differing[0];
  if (words.length !== others.length || at === undefined || differing.length > 1) return false;
  const [before, after] = [words[at]!, others[at]!];
  const isNumbered = /^\d+$/.test(before) && Number(after) === Number(before) + 1;
  return isNumbered || PAIRS.some(([a, b]) => a === before && b === after);
}

function tokens(header: string): readonly string[] {
  return header.toLowerCase().match(/\p{L}+|\d+/gu) ?? [];
}
