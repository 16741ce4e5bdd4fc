import { type Coupling, movedTogether } from "./coupling.ts";
import {
  centreOf,
  INPUT_NAMES,
  type InputName,
  type InputValues,
  isRange,
  type PlanInputs,
} from "./planInputs.ts";
import { PLAN_MEASURES, type PlanFrame, type PlanMeasure, type PlanValues, planModel } from "./planModel.ts";

export interface Ends {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * First-order propagation (JCGM 100:2008, GUM, 5.1.2) with each input moved to either end of its own 95 % interval:
 * what lowers a result adds in quadrature below, what raises it above, so a one-sided doubt stays one-sided. The
 * inputs are independent, but for what was found from one logged point with the stated constants.
 */
export function propagated(
  inputs: PlanInputs,
  frame: PlanFrame,
  coupling: Coupling | null,
): { readonly [name in PlanMeasure]: Ends } {
  const centre = centreOf(inputs);
  const base = planModel(centre, frame);
  const moved = INPUT_NAMES.flatMap((name) =>
    movedTo(name, inputs, centre, coupling).map((values) => planModel(values, frame)),
  );
  const pairs = PLAN_MEASURES.map((name) => [name, endsOf(name, base, moved)] as const);
  return Object.fromEntries(pairs) as { readonly [name in PlanMeasure]: Ends };
}

function movedTo(
  name: InputName,
  inputs: PlanInputs,
  centre: InputValues,
  coupling: Coupling | null,
): readonly InputValues[] {
  const input = inputs[name];
  if (!isRange(input) || input.low === input.high) return [];
  return [input.low, input.high].map((end) => movedTogether(centre, name, end, coupling));
}

/** `moved` holds two results per input, its low and its high end. */
function endsOf(name: PlanMeasure, base: PlanValues, moved: readonly PlanValues[]): Ends {
  let below = 0;
  let above = 0;
  for (let i = 0; i + 1 < moved.length; i += 2) {
    const changes = [moved[i]![name] - base[name], moved[i + 1]![name] - base[name]];
    below = Math.hypot(below, Math.min(0, ...changes));
    above = Math.hypot(above, Math.max(0, ...changes));
  }
  return { value: base[name], low: base[name] - below, high: base[name] + above };
}
