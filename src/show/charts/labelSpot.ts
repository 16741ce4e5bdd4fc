/** A point of a drawing that a label must not cover, percent of the plot. */
export type Obstacle = readonly [xPercent: number, yPercent: number];

/** A place tried for a label: a point of the plot, and how far and which way the text goes from it. */
export interface LabelTry {
  readonly xPercent: number;
  readonly yPercent: number;
  readonly dx: number;
  readonly dy: number;
  readonly anchor: "start" | "middle" | "end";
}

/** Sizes of the plot that a label is tried at, px; on the narrowest it shows its short words only. */
const SIZES = [
  { width: 180, height: 190, isShort: true },
  { width: 340, height: 190, isShort: false },
  { width: 450, height: 240, isShort: false },
  { width: 580, height: 240, isShort: false },
] as const;
/** Width of a character, and how far text reaches above and below its base line, px. */
const CHARACTER_PX = 6.9;
const ABOVE_PX = 12;
const BELOW_PX = 5;
const ROOM_PX = 3;
/** Leaving the plot is worse than any number of points covered. */
const CUT_OFF = 10_000;

export interface LabelWords {
  /** What a wide plot shows. */
  readonly full: string;
  /** What a narrow one shows; empty when nothing. */
  readonly short: string;
}

/**
 * The first of the places that covers the fewest obstacles at every size, and what it covers from now on. Wordings are
 * tried in order, until one finds a place that covers nothing.
 */
export function labelSpot(
  tries: readonly LabelTry[],
  wordings: readonly LabelWords[],
  obstacles: readonly Obstacle[],
): {
  readonly spot: LabelTry;
  readonly words: LabelWords;
  readonly covers: readonly Obstacle[];
  /** The label covers nothing and stays inside the plot. */
  readonly isFree: boolean;
} {
  const scored = wordings.flatMap((words) =>
    tries.map((spot) => ({ spot, words, score: scoreOf(spot, words, obstacles) })),
  );
  const { spot, words, score } = scored.reduce((a, b) => (b.score < a.score ? b : a));
  return { spot, words, covers: coveredBy(spot, words), isFree: score === 0 };
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function boxOf(spot: LabelTry, text: string, { width, height }: { width: number; height: number }): Box {
  const long = text.length * CHARACTER_PX;
  const x = (spot.xPercent / 100) * width + spot.dx;
  const y = (spot.yPercent / 100) * height + spot.dy;
  const left = spot.anchor === "start" ? x : spot.anchor === "end" ? x - long : x - long / 2;
  return { left, right: left + long, top: y - ABOVE_PX, bottom: y + BELOW_PX };
}

function scoreOf(spot: LabelTry, words: LabelWords, obstacles: readonly Obstacle[]): number {
  let score = 0;
  for (const size of SIZES) {
    const text = size.isShort ? words.short : words.full;
    if (text === "") continue;
    const { left, right, top, bottom } = boxOf(spot, text, size);
    if (left < 0 || right > size.width || top < 0 || bottom > size.height) score += CUT_OFF;
    for (const [xPercent, yPercent] of obstacles) {
      const x = (xPercent / 100) * size.width;
      const y = (yPercent / 100) * size.height;
      const isCovered =
        x > left - ROOM_PX && x < right + ROOM_PX && y > top - ROOM_PX && y < bottom + ROOM_PX;
      if (isCovered) score++;
    }
  }
  return score;
}

/** A grid of points over the label at every size, so that a later label keeps away. */
function coveredBy(spot: LabelTry, words: LabelWords): readonly Obstacle[] {
  return SIZES.flatMap((size) => {
    const text = size.isShort ? words.short : words.full;
    if (text === "") return [];
    const { left, right, top, bottom } = boxOf(spot, text, size);
    const across = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];
    return across.flatMap((share) =>
      [top, (top + bottom) / 2, bottom].map((y): Obstacle => {
        const x = left + share * (right - left);
        return [(100 * x) / size.width, (100 * y) / size.height];
      }),
    );
  });
}
