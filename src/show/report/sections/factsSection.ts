import type { Budget } from "../../../aircraft/budget.ts";
import type { Facts } from "../../../aircraft/facts.ts";
import { plainNumber } from "../../../base/quantity/index.ts";
import { html, type Markup } from "../../charts/index.ts";
import { ASSUMED_SENSORS, NO_AIRCRAFT } from "../sentences.ts";

type Row = readonly [words: string, value: string];

/** What the numbers rest on: the fitted parts and the sensor accuracies that the intervals contain. */
export function factsSection(facts: Facts, budget: Budget): Markup {
  const rows = [...fitted(facts), ...assumed(facts, budget)];
  const items = rows.map(([words, value]) => html`<dt>${words}</dt><dd>${value}</dd>`);
  const lead = facts.name === null ? NO_AIRCRAFT : ASSUMED_SENSORS;
  return html`<section aria-labelledby="facts"><h2 id="facts">What was fitted and assumed</h2><p>${lead}</p><dl class="pairs">${items}</dl></section>`;
}

function fitted({ pack, controller, motor, propeller, flyingMassKg }: Facts): readonly Row[] {
  return [
    row("Pack", [value(pack.cells, "cells"), value(pack.capacityMah, "mAh")]),
    row("Controller", [value(controller.continuousA, "A continuous"), value(controller.burstA, "A burst")]),
    row("Motor", [value(motor.kv, "rev/min per volt"), motor.count === 1 ? null : `${motor.count} motors`]),
    row("Propeller", [propellerText(propeller)]),
    row("Flying mass", [value(flyingMassKg, "kg")]),
  ].flatMap((one) => (one === null ? [] : [one]));
}

function assumed({ sensors, field }: Facts, budget: Budget): readonly Row[] {
  return [
    ["Current sensor", `within ${sensors.currentAccuracyPct} %, scale ${plainNumber(sensors.currentScale)}`],
    ["Voltage sensor", `within ${sensors.voltageAccuracyPct} %`],
    ["Temperature probe", `within ${sensors.temperatureAccuracyC} °C`],
    ["Hot day", `${field.hotDayC} °C`],
    ["Reserve to land with", `${budget.reservePct} % of the charge`],
  ];
}

function propellerText({ diameterIn, pitchIn, blades }: Facts["propeller"]): string | null {
  if (diameterIn === null || pitchIn === null) return null;
  return `${diameterIn}x${pitchIn} in, ${blades} blades`;
}

/** As the pilot wrote it: a stated number is not rounded. */
function value(number: number | null, unit: string): string | null {
  return number === null ? null : `${number} ${unit}`;
}

function row(words: string, parts: readonly (string | null)[]): Row | null {
  const known = parts.filter((part) => part !== null);
  return known.length === 0 ? null : [words, known.join(", ")];
}
