import type { Facts } from "../../aircraft/facts.ts";
import { isKnown } from "../../base/quantity/index.ts";
import type { PlanConditions } from "./conditions.ts";
import { isSameShape, shapeOf } from "./flownPropellers.ts";
import type { KnownParts } from "./knownParts.ts";
import { type PlanPrediction, predictPlan } from "./predictPlan.ts";
import { beyondLoggedCurrent, otherPack, otherPropeller } from "./sentences.ts";

/** What is changed; null stays as it is. */
export interface Change {
  readonly diameterIn: number | null;
  readonly pitchIn: number | null;
  readonly blades: number | null;
  readonly cells: number | null;
  readonly capacityMah: number | null;
}

export interface SwapPrediction {
  readonly facts: Facts;
  readonly before: PlanPrediction;
  readonly after: PlanPrediction;
  /** How far the answer reaches beyond what was logged or published; empty when it does not. */
  readonly extrapolation: readonly string[];
}

/**
 * The budget before and after a change. Ambient and elevation are changed by giving other conditions for after.
 */
export function predictSwap(
  facts: Facts,
  known: KnownParts,
  conditions: { readonly before: PlanConditions; readonly after: PlanConditions },
  change: Change,
): SwapPrediction {
  const changed = changedFacts(facts, change);
  const before = predictPlan(facts, known, conditions.before);
  const after = predictPlan(changed, known, conditions.after);
  return { facts: changed, before, after, extrapolation: extrapolation(changed, known, after) };
}

/** The stated pack resistance goes with the cells and against the capacity, for a pack of the same make. */
export function changedFacts(facts: Facts, change: Change): Facts {
  const { pack, propeller } = facts;
  const cells = change.cells ?? pack.cells;
  const capacityMah = change.capacityMah ?? pack.capacityMah;
  const ofCells = cells !== null && pack.cells !== null ? cells / pack.cells : 1;
  const ofCapacity = capacityMah !== null && pack.capacityMah !== null ? pack.capacityMah / capacityMah : 1;
  const resistanceMohm = pack.resistanceMohm === null ? null : pack.resistanceMohm * ofCells * ofCapacity;
  return {
    ...facts,
    pack: { ...pack, cells, capacityMah, resistanceMohm },
    propeller: {
      ...propeller,
      diameterIn: change.diameterIn ?? propeller.diameterIn,
      pitchIn: change.pitchIn ?? propeller.pitchIn,
      blades: change.blades ?? propeller.blades,
    },
  };
}

function extrapolation(facts: Facts, known: KnownParts, after: PlanPrediction): readonly string[] {
  const shape = shapeOf(facts);
  const { pack, flown } = known;
  const logged = flown[0];
  const isFlown = flown.some((one) => isSameShape(one.shape, shape));
  const highestA = Math.max(...flown.flatMap(({ staticCurrentA }) => staticCurrentA?.value ?? []));
  const { staticCurrentA } = after.measures;
  return [
    ...after.remarks,
    ...(logged?.shape && shape && !isFlown ? [otherPropeller(shape, logged.shape)] : []),
    ...(pack && pack.cells !== facts.pack.cells ? [otherPack(pack.cells, "cells")] : []),
    ...(pack?.capacityMah && pack.capacityMah !== facts.pack.capacityMah
      ? [otherPack(pack.capacityMah, "mAh")]
      : []),
    ...(isKnown(staticCurrentA) && staticCurrentA.value > highestA && Number.isFinite(highestA)
      ? [beyondLoggedCurrent(staticCurrentA.value, highestA)]
      : []),
  ];
}
