import { RandomNumbers } from "../src/base/statistics/index.ts";
import { type TrendMeasure, trendsOf, watchSeries } from "../src/season/trends/index.ts";
import { SCENARIOS, simulatedSeason } from "../test/season/trends/simulatedSeasons.ts";

const [seasonsText = "20", only = "", seedText = "7100"] = process.argv.slice(2);
const seasons = Number(seasonsText);
const FIRST_SEED = Number(seedText);
const QUIET_SEASONS = 1000;

if (only === "") quietSeries();
console.log(`\nthrough simulated logs: ${seasons} seasons of 12 flights each, seeds from ${FIRST_SEED}`);
console.log("season".padEnd(56), "heating  pack     rate     coefficient  any");
for (const [name, scenario] of Object.entries(SCENARIOS)) {
  if (!name.includes(only)) continue;
  const alarms = new Map<string, number>();
  const notJudged = new Map<string, number>();
  let any = 0;
  for (let k = 0; k < seasons; k += 1) {
    const { series } = trendsOf(simulatedSeason(scenario, FIRST_SEED + k), "simulated");
    if (series.some(({ alarm }) => alarm !== null)) any += 1;
    for (const { measure, alarm, verdict } of series) {
      if (alarm !== null) alarms.set(measure, (alarms.get(measure) ?? 0) + 1);
      if (verdict === "not judged") notJudged.set(measure, (notJudged.get(measure) ?? 0) + 1);
    }
  }
  const shown = (measure: TrendMeasure) =>
    `${share(alarms.get(measure) ?? 0, seasons)}${(notJudged.get(measure) ?? 0) > 0 ? ` (${share(notJudged.get(measure) ?? 0, seasons)} n.j.)` : ""}`;
  const cells = (
    ["controllerRisePerA2", "packResistanceMohm", "chargeRateMahPerS", "propellerPowerCoefficient"] as const
  ).map((measure) => shown(measure).padEnd(8));
  const cooling = notJudged.has("controllerTimeConstantS") ? ", lost cooling not judged" : "";
  console.log(name.padEnd(56), cells.join(" "), share(any, seasons), cooling);
}

/** Four series of independent noise, watched at every planned look. */
function quietSeries(): void {
  const random = new RandomNumbers(20_261);
  let seasonsWithAlarm = 0;
  for (let season = 0; season < QUIET_SEASONS; season += 1) {
    const series = Array.from({ length: 4 }, () =>
      Array.from({ length: 12 }, () => 1 + 0.04 * normal(random)),
    );
    if (series.some((values) => watchSeries(values, "up"))) seasonsWithAlarm += 1;
  }
  console.log(
    `no trend, noise 4 %, seed 20261: an alarm in any of 4 series at any look in ${share(seasonsWithAlarm, QUIET_SEASONS)} of ${QUIET_SEASONS} seasons of 12 flights`,
  );
}

function normal(random: RandomNumbers): number {
  return Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());
}

function share(count: number, of: number): string {
  return `${((100 * count) / of).toFixed(1)} %`;
}
