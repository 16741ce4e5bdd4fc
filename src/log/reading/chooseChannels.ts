import { type ChannelName, channelFacts, channelWords, isCellChannel } from "../../base/channels/index.ts";
import type { Candidate } from "./candidate.ts";
import { candidacyOf, cellCountingStart, isCandidate } from "./candidate.ts";
import { chooseUnit, type UnitChoice } from "./channelUnit.ts";
import { type ColumnView, headerUnit } from "./columnView.ts";
import { packsInSeries } from "./packsInSeries.ts";
import { type Unit, unitOf } from "./units.ts";

/** A channel with its column and its numbers in the channel's unit. */
export interface ChosenChannel {
  readonly channel: ChannelName;
  readonly view: ColumnView;
  readonly unit: Unit;
  readonly why: string;
  readonly values: Float64Array;
  readonly isUnitFromValues: boolean;
  /** The header's unit, where the user gave another. */
  readonly againstUnit: Unit | null;
}

/** Several columns fit one channel alike. */
export interface Rivalry {
  readonly channel: ChannelName;
  readonly columns: readonly ColumnView[];
  readonly isMotorCurrent: boolean;
}

export interface UnitDoubt {
  readonly channel: ChannelName;
  readonly view: ColumnView;
  readonly doubt: string;
  readonly units: readonly string[];
  /** Cell counts that fit, where the count and not the unit is in doubt. */
  readonly cellCounts: readonly number[];
}

export interface ChannelChoices {
  readonly chosen: readonly ChosenChannel[];
  /** Per 0-based column: why it holds no channel, and a channel it could be forced to. */
  readonly leftAlone: ReadonlyMap<number, { readonly why: string; readonly channel: ChannelName | null }>;
  readonly rivalries: readonly Rivalry[];
  readonly unitDoubts: readonly UnitDoubt[];
  /** Columns of one cell's volts that wait for the cell count. */
  readonly perCell: readonly ColumnView[];
  /** Columns of electrical speed that wait for the pole pairs. */
  readonly electrical: readonly ColumnView[];
}

export interface ChannelAnswers {
  /** Channel to 0-based column. */
  readonly columns: ReadonlyMap<ChannelName, number>;
  readonly units: ReadonlyMap<ChannelName, Unit>;
  /** The speed was said to be electrical. */
  readonly isElectrical: boolean;
  readonly cells: number | null;
  readonly polePairs: number | null;
}

/** Scores closer than this do not tell two columns apart. */
const TIE = 3;
/** Channels whose doubts stop the reading; for the others the first column is as good. */
const ASKED: ReadonlySet<ChannelName> = new Set([
  "packVoltage",
  "current",
  "shaftSpeed",
  "controllerTemperature",
  "motorTemperature",
]);

/** A dead sensor of these is judged where the whole flight is seen; others are as if not logged. */
const KEPT_DEAD: ReadonlySet<ChannelName> = new Set(["packVoltage", "current"]);

/** Gives each channel its column and unit. `taken`: 0-based columns of the clock. */
export function chooseChannels(
  views: readonly ColumnView[],
  taken: ReadonlySet<number>,
  answers: ChannelAnswers,
): ChannelChoices {
  const build = {
    chosen: [] as ChosenChannel[],
    leftAlone: new Map<number, { why: string; channel: ChannelName | null }>(),
    rivalries: [] as Rivalry[],
    unitDoubts: [] as UnitDoubt[],
    perCell: [] as ColumnView[],
    electrical: [] as ColumnView[],
  };
  const forced = new Set(answers.columns.values());
  const byChannel = new Map<ChannelName, Candidate[]>();
  const firstCell = cellCountingStart(views);
  for (const view of views) {
    if (taken.has(view.at) || forced.has(view.at)) continue;
    const candidacy = candidacyOf(view, firstCell);
    if (!isCandidate(candidacy)) build.leftAlone.set(view.at, { why: candidacy.reason, channel: null });
    else byChannel.set(candidacy.channel, [...(byChannel.get(candidacy.channel) ?? []), candidacy]);
  }
  for (const [channel, at] of answers.columns) {
    const view = views[at];
    if (channel === "time" || view === undefined) continue;
    leaveAlone(byChannel.get(channel) ?? [], "another column was given for this channel", build.leftAlone);
    byChannel.set(channel, [forcedCandidate(channel, view, answers)]);
  }
  withoutNeedlessCell(byChannel, build.leftAlone);
  splitPacksInSeries(byChannel, answers.cells);
  for (const [channel, candidates] of byChannel) settle(channel, candidates, answers, build);
  return build;
}

/** One cell's volts beside numbered cells are no news. */
function withoutNeedlessCell(byChannel: Map<ChannelName, Candidate[]>, leftAlone: Build["leftAlone"]): void {
  const volts = byChannel.get("packVoltage") ?? [];
  const needless = volts.filter((each) => each.isPerCell && !each.isGiven);
  if (needless.length === 0 || ![...byChannel.keys()].some(isCellChannel)) return;
  leaveAlone(needless, "a cell voltage without the number of the cell", leftAlone);
  const kept = volts.filter((each) => !needless.includes(each));
  if (kept.length > 0) byChannel.set("packVoltage", kept);
  else byChannel.delete("packVoltage");
}

/** Two columns that are packs in series become channels of their own; their sum is the pack's. */
function splitPacksInSeries(byChannel: Map<ChannelName, Candidate[]>, cells: number | null): void {
  const pair = packsInSeries(byChannel.get("packVoltage") ?? [], cells);
  if (pair === null) return;
  const why = `one of two packs in series: both together fit ${cells} cells`;
  byChannel.set("packVoltage1", [{ ...pair.first, channel: "packVoltage1", why }]);
  byChannel.set("packVoltage2", [{ ...pair.second, channel: "packVoltage2", why }]);
  const rest = byChannel.get("packVoltage")!.filter((each) => each !== pair.first && each !== pair.second);
  if (pair.whole === null && !rest.some(({ isGiven }) => isGiven)) byChannel.delete("packVoltage");
  else byChannel.set("packVoltage", rest);
}

type Build = {
  chosen: ChosenChannel[];
  leftAlone: Map<number, { why: string; channel: ChannelName | null }>;
  rivalries: Rivalry[];
  unitDoubts: UnitDoubt[];
  perCell: ColumnView[];
  electrical: ColumnView[];
};

function forcedCandidate(channel: ChannelName, view: ColumnView, answers: ChannelAnswers): Candidate {
  const named = candidacyOf(view, 1);
  const isElectrical = channel === "shaftSpeed" && isCandidate(named) && named.isElectrical;
  return {
    channel,
    view,
    score: 100,
    isGiven: true,
    isPerCell: channel === "packVoltage" && isCandidate(named) && named.isPerCell === true,
    why: "the column was given",
    isMotorCurrent: false,
    isElectrical: isElectrical || (channel === "shaftSpeed" && answers.isElectrical),
  };
}

function leaveAlone(candidates: readonly Candidate[], why: string, leftAlone: Build["leftAlone"]): void {
  for (const { view, channel } of candidates) leftAlone.set(view.at, { why, channel });
}

function settle(
  channel: ChannelName,
  all: readonly Candidate[],
  answers: ChannelAnswers,
  build: Build,
): void {
  const ranked = rank(all, answers);
  const best = ranked[0]!;
  const rivals = rivalsOf(best, ranked);
  const motorOnly = best.isMotorCurrent && !best.isGiven;
  if ((rivals.length > 1 && ASKED.has(channel)) || motorOnly) {
    build.rivalries.push({ channel, columns: rivals.map((each) => each.view), isMotorCurrent: motorOnly });
    leaveAlone(all, `could be the ${channelWords(channel)}; a choice is needed`, build.leftAlone);
    return;
  }
  for (const loser of ranked.slice(1)) {
    build.leftAlone.set(loser.view.at, { why: lossReason(loser, best), channel });
  }
  if (best.view.range.isDead && !best.isGiven && !KEPT_DEAD.has(channel)) {
    build.leftAlone.set(best.view.at, { why: `${best.why}, but every value is zero`, channel });
    return;
  }
  if (best.isElectrical && answers.polePairs === null) {
    build.electrical.push(best.view);
    build.leftAlone.set(best.view.at, { why: "an electrical speed; the pole pairs are not known", channel });
    return;
  }
  if (best.isPerCell && answers.cells === null) {
    build.perCell.push(best.view);
    build.leftAlone.set(best.view.at, { why: `${best.why}; the cells are not known`, channel });
    return;
  }
  const unit = best.isPerCell
    ? perCellUnit(best.view, answers)
    : chooseUnit(channel, best.view, answers.units.get(channel) ?? null, answers.cells);
  if ("doubt" in unit) {
    build.unitDoubts.push({
      channel,
      view: best.view,
      doubt: unit.doubt,
      units: unit.options,
      cellCounts: unit.cellCounts ?? [],
    });
    build.leftAlone.set(best.view.at, { why: unit.doubt, channel });
    return;
  }
  build.chosen.push(chosenChannel(best, unit, answers.polePairs));
}

/** Volts of one cell times the cells. */
function perCellUnit(
  view: ColumnView,
  { units, cells }: ChannelAnswers,
): Exclude<UnitChoice, { doubt: string }> {
  const given = units.get("packVoltage") ?? headerUnit(view, "voltage");
  const volts = given ?? unitOf("voltage", view.range.median > 1500 ? "mV" : "V")!;
  if (volts.name.endsWith("/cell")) return { unit: volts, why: "the unit was given", isFromValues: false };
  const unit = { ...volts, name: `${volts.name}/cell`, factor: volts.factor * cells! };
  return { unit, why: `times ${cells} cells`, isFromValues: false };
}

function chosenChannel(
  best: Candidate,
  { unit, why, isFromValues, against }: Exclude<UnitChoice, { doubt: string }>,
  polePairs: number | null,
): ChosenChannel {
  const pairs = best.isElectrical ? (polePairs ?? 1) : 1;
  const turned = pairs === 1 ? "" : `; divided by ${pairs} pole pairs`;
  const dead = best.view.range.isDead ? "; every value is zero" : "";
  return {
    channel: best.channel,
    view: best.view,
    unit,
    isUnitFromValues: isFromValues,
    againstUnit: against ?? null,
    why: `${best.why}; ${why}${turned}${dead}`,
    values: inChannelUnit(best.view.values, unit, pairs),
  };
}

/** Dividing by the whole number of small units in a large one keeps 50190 mV at 50.19 V. */
function inChannelUnit(values: Float64Array, unit: Unit, pairs: number): Float64Array {
  if (unit.factor === 1 && unit.offset === 0 && pairs === 1) return values;
  const inverse = Math.round(1 / unit.factor);
  const isShare = unit.factor < 1 && Math.abs(inverse * unit.factor - 1) < 1e-12;
  return values.map((value) => ((isShare ? value / inverse : value * unit.factor) + unit.offset) / pairs);
}

/** Live before dead, then by score; a voltage that fits the cells goes first. */
function rank(all: readonly Candidate[], answers: ChannelAnswers): readonly Candidate[] {
  const scored = all.map((each) => ({ ...each, score: each.score + fitScore(each, answers) }));
  return scored.sort(
    (a, b) =>
      Number(a.view.range.isDead) - Number(b.view.range.isDead) || b.score - a.score || a.view.at - b.view.at,
  );
}

function fitScore(each: Candidate, answers: ChannelAnswers): number {
  if (each.isGiven || isCellChannel(each.channel)) return 0;
  const unit = chooseUnit(each.channel, each.view, answers.units.get(each.channel) ?? null, answers.cells);
  if ("doubt" in unit) return -20;
  const middle = each.view.range.median * unit.unit.factor + unit.unit.offset;
  const [low, high] = channelFacts(each.channel).plausible;
  if (each.channel === "packVoltage") return middle >= Math.max(low, 9.5) && middle <= high ? 5 : -8;
  return each.view.range.high99 * unit.unit.factor + unit.unit.offset <= high ? 0 : -5;
}

/** Candidates that the best does not clearly beat, the best included. */
function rivalsOf(best: Candidate, ranked: readonly Candidate[]): readonly Candidate[] {
  if (best.isGiven) return [best];
  return ranked.filter((each) => {
    if (each === best) return true;
    const isClose = best.score - each.score < TIE && each.view.range.isDead === best.view.range.isDead;
    return isClose && !best.view.range.isDead && !isSameSensor(best.view, each.view);
  });
}

/** Columns numbered apart are two sensors, however alike they read. */
function isSameSensor(a: ColumnView, b: ColumnView): boolean {
  return a.name.number === b.name.number && isSameSeries(a.values, b.values);
}

/** True when two columns tell the same within two per cent in nearly every row. */
function isSameSeries(a: Float64Array, b: Float64Array): boolean {
  let differing = 0;
  for (let row = 0; row < a.length; row++) {
    const difference = Math.abs(a[row]! - b[row]!);
    if (difference > 0.02 * Math.max(Math.abs(a[row]!), Math.abs(b[row]!)) + 0.1) differing++;
  }
  return differing <= a.length * 0.01;
}

function lossReason(loser: Candidate, best: Candidate): string {
  const chosen = `"${best.view.header.slice(0, 40)}" (column ${best.view.at + 1})`;
  if (loser.view.range.isDead) return `every value is zero; ${chosen} is live`;
  if (loser.isMotorCurrent) return `a current of the motor; ${chosen} is the pack's`;
  if (loser.isElectrical) return `an electrical speed; ${chosen} is the shaft's`;
  return `${loser.why}; ${chosen} fits better`;
}
