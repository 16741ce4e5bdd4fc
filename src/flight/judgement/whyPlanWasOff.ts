import type { Budget } from "../../aircraft/budget.ts";
import { between, highEnd, isKnown, lowEnd, type Quantity, unknown } from "../../base/quantity/index.ts";
import type { MeasureName } from "../analysis/index.ts";
import { centreOf, NOTHING_KNOWN, type PreparedPlan, preparedPlan } from "../prediction/index.ts";
import { RESERVE_SOURCE } from "./criteria.ts";
import type { Judgement } from "./judgement.ts";
import type { WhyOff, WhyOffPart } from "./whyOff.ts";
import { type MeasuredFlight, type Replaced, replacements } from "./whyOffFacts.ts";
import { factsOfLine, LINE_MODELS, type OffValues } from "./whyOffLines.ts";
import { CANNOT_BE_SOLVED, NO_DESCRIBED_VALUE, PILOTS_CHOICE, whyOffText } from "./whyOffSentences.ts";

/**
 * For each planned line that did not hold: what the aircraft as described gives (the baseline), how much of the
 * difference each fact brings when it alone is replaced by the measured one, and what remains. Facts act together a
 * little; that is in the rest.
 */
export function whyPlanWasOff(
  flight: MeasuredFlight,
  budget: Budget,
  judgements: readonly Judgement[],
): readonly WhyOff[] {
  const off = judgements.filter(
    // The reserve is no prediction: why more charge was used stands with the line of the charge.
    ({ against, verdict, source }) =>
      against === "plan" && verdict === "outside" && source !== RESERVE_SOURCE,
  );
  if (off.length === 0) return [];
  const { reservePct, planned } = budget;
  const conditions = { ambientC: null, elevationM: null, reservePct };
  const described = preparedPlan(flight.facts, NOTHING_KNOWN, conditions);
  const flownS = planned.flightTimeS ?? flight.measures.flightTimeS.value ?? Number.NaN;
  const base = { inputs: centreOf(described.inputs), flownS };
  const replace = replacements(flight);
  return off.flatMap(({ line, value, measured }) =>
    value === null ? [] : [whyOff(line, value, measured, described, base, replace)],
  );
}

type Replace = ReturnType<typeof replacements>;

function whyOff(
  line: MeasureName,
  planned: number,
  measured: Quantity,
  described: PreparedPlan,
  base: OffValues,
  replace: Replace,
): WhyOff {
  const { unit } = measured;
  const valueAt = LINE_MODELS[line];
  if (valueAt === undefined) return notExplained(line, planned, measured, whyNoBaseline(line));
  const at = (values: OffValues) => valueAt(values, described.frame);
  const baselineAt = at(base);
  if (!Number.isFinite(baselineAt)) return notExplained(line, planned, measured, CANNOT_BE_SOLVED);
  const baseline = baselineOf(baselineAt, described, base, at, unit);
  const parts = factsOfLine(line).map((fact): WhyOffPart => {
    return { fact, change: changeOf(replace(fact, base), at, baselineAt, unit) };
  });
  const planItself = mirrored(planned, baseline);
  const rest = restOf(measured, baselineAt, parts);
  return withText({ line, planned, measured, baseline, planItself, parts, rest });
}

function whyNoBaseline(line: MeasureName): string {
  return line === "flightTimeS" ? PILOTS_CHOICE : NO_DESCRIBED_VALUE;
}

function notExplained(line: MeasureName, planned: number, measured: Quantity, why: string): WhyOff {
  const none = unknown(measured.unit, why);
  return withText({ line, planned, measured, baseline: none, planItself: none, parts: [], rest: none });
}

function withText(without: Omit<WhyOff, "text">): WhyOff {
  return { ...without, text: whyOffText(without) };
}

type At = (values: OffValues) => number;

/** The described aircraft's value with the interval of the published ranges it rests on. */
function baselineOf(
  value: number,
  { inputs }: PreparedPlan,
  base: OffValues,
  at: At,
  unit: string,
): Quantity {
  let below = 0;
  let above = 0;
  for (const [name, input] of Object.entries(inputs)) {
    if (!("value" in input)) continue;
    const changes = [input.low, input.high].map(
      (end) => at({ ...base, inputs: { ...base.inputs, [name]: end } }) - value,
    );
    below = Math.hypot(below, Math.min(0, ...changes));
    above = Math.hypot(above, Math.max(0, ...changes));
  }
  return between(value, value - below, value + above, unit, "predicted");
}

function changeOf(replaced: Replaced, at: At, baseline: number, unit: string): Quantity {
  if (replaced.why !== null) return unknown(unit, replaced.why);
  const ends = [at(replaced.low) - baseline, at(replaced.high) - baseline];
  const value = at(replaced.value) - baseline;
  return between(value, Math.min(...ends), Math.max(...ends), unit, "derived");
}

/** planned less a quantity. */
function mirrored(planned: number, baseline: Quantity): Quantity {
  if (!isKnown(baseline) || baseline.low === null || baseline.high === null) return baseline;
  const { value, low, high, unit } = baseline;
  return between(planned - value, planned - high, planned - low, unit, "predicted");
}

/** What the measured line holds beyond the baseline and the changes that are known. */
function restOf(measured: Quantity, baseline: number, parts: readonly WhyOffPart[]): Quantity {
  if (!isKnown(measured)) return unknown(measured.unit, measured.why);
  const changes = parts.map(({ change }) => change).filter(isKnown);
  const value = changes.reduce((left, { value: change }) => left - change, measured.value - baseline);
  const below = changes.map((change) => highEnd(change) - change.value);
  const above = changes.map((change) => change.value - lowEnd(change));
  const low = value - Math.hypot(measured.value - lowEnd(measured), ...below);
  const high = value + Math.hypot(highEnd(measured) - measured.value, ...above);
  return between(value, low, high, measured.unit, "derived");
}
