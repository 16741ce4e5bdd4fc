import { known, unknown } from "../../src/base/quantity/index.ts";
import type { FlightPictures, WeakestPart } from "../../src/flight/analysis/index.ts";

/** Pictures of the invented flight, made by hand: their numbers are not a model of anything. */
export function samplePictures(kind: "flight" | "benchRun" = "flight"): FlightPictures {
  return { pack: samplePack(), heat: sampleHeat(), load: sampleLoad(kind) };
}

const line = (currentA: number) => 32.6 - 0.045 * currentA;

function samplePack(): FlightPictures["pack"] {
  const points = Array.from({ length: 240 }, (_, k): [number, number] => {
    const currentA = (k * 37) % 79;
    return [currentA, line(currentA) + 0.12 * Math.sin(k)];
  });
  return {
    picture: {
      points,
      lines: [1, 10, 60].map((afterS) => ({
        afterS,
        ends: [
          [0, 32.6],
          [78.4, 32.6 - 78.4 * (0.04 + 0.004 * Math.log(afterS))],
        ],
      })),
      lowest: { atS: 58.3, currentA: 76, packV: 28.9, belowV: 3.7 },
      bands: [0, 20, 40, 60].map((fromA) => ({
        fromA,
        toA: fromA + 20,
        samples: 60,
        medianV: line(fromA + 10) + 0.01,
        lineV: line(fromA + 10),
      })),
      openCircuit: [
        [0, 33.4],
        [2384, 31.5],
      ],
    },
    byStepsMohm: 41.2,
    differenceMohm: 1.3,
    under: (currentA) => ({
      dropV: known(0.045 * currentA, 0.2, "V", "predicted"),
      endCellV: known(3.41, 0.03, "V", "predicted"),
    }),
  };
}

function sampleHeat(): FlightPictures["heat"] {
  const x = Float64Array.from({ length: 160 }, (_, k) => 2.3 * k);
  const model = x.map((atS) => 21 + 48 * (1 - Math.exp(-atS / 95)) * (atS < 335 ? 1 : 0.9));
  const measured = model.map((value, k) => Math.round(2 * (value + Math.sin(k / 3))) / 2);
  return {
    measured: { x, y: measured },
    modelled: { x, y: model },
    hotDay: { x, y: measured.map((value) => value + 17) },
    hotDayC: 35,
    airC: known(18, 3, "degC", "measured", { why: "as stated" }),
    fittedAirC: 19.2,
    probeLagS: 4,
    fullThrottleA: 54.8,
    today: {
      settlesC: known(78, 6, "degC", "predicted"),
      untilLimitS: unknown("s", "not reached: full throttle does not bring the controller to its limit"),
    },
    onHotDay: {
      settlesC: known(95, 6, "degC", "predicted"),
      untilLimitS: known(164, 22, "s", "predicted", { why: "starting at the air's 35 °C" }),
    },
  };
}

function sampleLoad(kind: "flight" | "benchRun"): FlightPictures["load"] {
  const speedRpm = Float64Array.from({ length: 41 }, (_, k) => 3300 + 132 * k);
  const asked = (share: number) => ({
    speedRpm,
    currentA: speedRpm.map((rpm) => 1.8 + 54 * share * (rpm / 6700) ** 2),
  });
  const onGround = "a bench run does not fly";
  return {
    lines: {
      motor: { speedRpm, currentA: speedRpm.map((rpm) => (33.2 - rpm / 230) / 0.075) },
      propeller: asked(1),
      propellerLow: asked(0.95),
      propellerHigh: asked(1.05),
      meetsRpm: known(6680, 190, "rev/min", "predicted"),
      meetsA: known(55.4, 6.1, "A", "predicted"),
      staticRpm: known(6410, 20, "rev/min", "measured"),
      staticA: known(54.8, 1.1, "A", "measured"),
      controllerA: 70,
      powerLimitA: 64.2,
      powerLimitW: 2000,
      maxRpm: 8300,
      coefficient: known(0.041, 0.002, "1", "derived"),
      motorCount: 1,
    },
    why: null,
    inFlight: {
      powerCoefficient: known(0.033, 0.002, "1", "derived"),
      shareOfStatic: kind === "flight" ? known(0.81, 0.03, "1", "derived") : unknown("1", onGround),
      efficiencyPct: kind === "flight" ? known(86.4, 2.1, "%", "derived") : unknown("%", onGround),
    },
    wrongSetting: null,
    offeredKv: known(222, 4, "rev/min/V", "derived"),
    staticDuty: 0.965,
    isCurrentEstimated: false,
  };
}

export function sampleCells(): WeakestPart {
  const parts = Array.from({ length: 8 }, (_, k) => ({
    number: k + 1,
    restV: known(4.174 - 0.001 * k, 0.021, "V", "measured"),
    minV: known(3.5 - 0.012 * k, 0.018, "V", "measured"),
    resistanceMohm: known(5.1 + 0.1 * k, 0.4, "mohm", "derived"),
    sagSharePct: known(96 + k, 3, "%", "derived"),
  }));
  return { kind: "cell", parts, weakest: null };
}
