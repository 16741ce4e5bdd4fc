import { expect, it } from "vitest";
import { NO_BUDGET } from "../../../src/aircraft/budget.ts";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { factsSection } from "../../../src/show/report/sections/factsSection.ts";

it("prints what the pilot stated as it was stated", () => {
  const facts = {
    ...NO_FACTS,
    name: "Tern",
    flyingMassKg: 7.125,
    propeller: { ...NO_FACTS.propeller, diameterIn: 20.25, pitchIn: 12.5 },
    sensors: { ...NO_FACTS.sensors, voltageAccuracyPct: 0.5 },
  };
  const { text } = factsSection(facts, NO_BUDGET);
  expect(text).toContain("<dd>7.125 kg</dd>");
  expect(text).toContain("<dd>20.25x12.5 in, 2 blades</dd>");
  expect(text).toContain("<dd>within 0.5 %</dd>");
});
