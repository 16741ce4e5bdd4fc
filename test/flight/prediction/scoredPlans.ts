import { isKnown, type Quantity } from "../../../src/base/quantity/index.ts";
import {
  type KnownParts,
  knownPartsFrom,
  NOTHING_KNOWN,
  type PlanMeasure,
  type PlanMeasures,
  predictPlan,
  predictSwap,
} from "../../../src/flight/prediction/index.ts";
import { LOG_STYLES, type TrueAircraft, writeLog } from "../../generator/index.ts";
import { checkBytes } from "../../truth/checkSimulated.ts";
import { otherPropeller, type RandomPlan, randomPlan, usualPropeller } from "./randomPlans.ts";

const SCORED = [
  "staticCurrentA",
  "staticRpm",
  "staticPowerW",
  "powerLoadingWPerKg",
  "sagPerCellV",
  "meanCurrentA",
  "controllerHotDayPeakC",
] as const satisfies readonly PlanMeasure[];

/** Share covered, median half-width over value, median error over value, and how many were given. */
export interface PlanRow {
  readonly cover: number;
  readonly halfWidth: number;
  readonly error: number;
  readonly given: number;
}

export type PlanRows = ReadonlyMap<PlanMeasure, PlanRow>;

/** From the aircraft file and published ranges alone. */
export function scoredWithoutLog(seeds: readonly number[]): PlanRows {
  return scored(
    seeds.map((seed) => randomPlan(seed, usualPropeller)),
    ({ aircraft, conditions }) => predictPlan(aircraft.facts, NOTHING_KNOWN, conditions).measures,
  );
}

/** The next flight from one log of the same aircraft. */
export function scoredFromLog(seeds: readonly number[]): PlanRows {
  return scored(
    seeds.map((seed) => randomPlan(seed, (aircraft) => aircraft)),
    (plan) => predictPlan(plan.aircraft.facts, fromOwnLog(plan), plan.conditions).measures,
  );
}

/** From the log of one propeller to the flight of another. */
export function scoredSwaps(seeds: readonly number[]): PlanRows {
  return scored(
    seeds.map((seed) => randomPlan(seed, usualPropeller, otherPropeller)),
    (plan) => {
      const { facts } = plan.aircraft;
      const { diameterIn, pitchIn } = facts.propeller;
      const logged = plan.logged().spec.aircraft.propeller;
      const before = { ...facts, propeller: { ...facts.propeller, ...sizeOf(logged) } };
      const known = fromOwnLog({ ...plan, aircraft: { ...plan.aircraft, facts: before } });
      const change = { diameterIn, pitchIn, blades: null, cells: null, capacityMah: null };
      const both = { before: plan.conditions, after: plan.conditions };
      return predictSwap(before, known, both, change).after.measures;
    },
  );
}

export function seedsFrom(first: number, count: number): readonly number[] {
  return Array.from({ length: count }, (_, k) => first + k);
}

const sizeOf = ({ diameterIn, pitchIn }: TrueAircraft["propeller"]) => ({ diameterIn, pitchIn });

function scored(plans: readonly RandomPlan[], predicted: (plan: RandomPlan) => PlanMeasures): PlanRows {
  const found = plans.map(predicted);
  return new Map(
    SCORED.map((name) => [name, rowOf(plans.map((plan, i) => [found[i]![name], plan.next[name]] as const))]),
  );
}

function rowOf(pairs: readonly (readonly [Quantity, number | null | undefined])[]): PlanRow {
  const given = pairs.flatMap(([got, truth]) => (isKnown(got) && truth != null ? [{ got, truth }] : []));
  const isCovered = ({ got, truth }: (typeof given)[number]) => got.low! <= truth && truth <= got.high!;
  return {
    cover: given.filter(isCovered).length / given.length,
    halfWidth: middle(given.map(({ got }) => (got.high! - got.low!) / 2 / got.value)),
    error: middle(given.map(({ got, truth }) => Math.abs(got.value / truth - 1))),
    given: given.length,
  };
}

function middle(values: readonly number[]): number {
  return values.toSorted((one, other) => one - other)[Math.floor(values.length / 2)] ?? Number.NaN;
}

function fromOwnLog({ logged, aircraft: { facts } }: RandomPlan): KnownParts {
  const first = logged();
  const bytes = writeLog(first.logged, LOG_STYLES.plainWords);
  const { flights } = checkBytes(bytes, JSON.stringify(first.facts), first.statedAmbientC);
  return knownPartsFrom(flights.map(({ kind, complete, measures }) => ({ kind, complete, measures, facts })));
}

/** The rows in words, for a reader. */
export function planTable(title: string, seeds: readonly number[], rows: PlanRows): string {
  const lines = [...rows].map(([name, { cover, halfWidth, error, given }]) =>
    given === 0
      ? `${name.padEnd(22)}  not given`
      : [
          name.padEnd(22),
          `cover ${(100 * cover).toFixed(1).padStart(5)} %`,
          `median half-width ${(100 * halfWidth).toFixed(1).padStart(5)} %`,
          `median error ${(100 * error).toFixed(1).padStart(5)} %`,
          `of ${given}`,
        ].join("  "),
  );
  return [`${title}, seeds ${seeds[0]} to ${seeds.at(-1)}`, ...lines].join("\n");
}
