import { isKnown, plainNumber, type Quantity, toPlace } from "../../../base/quantity/index.ts";
import type { LoadLines, LoadView } from "../../../flight/analysis/index.ts";
import {
  type Markup,
  numberAxis,
  type Plane,
  type PlaneMark,
  type PlaneWall,
  valueScale,
  wholeTrace,
} from "../../charts/index.ts";
import { limitSourceWords } from "../measureMethods.ts";
import type { FlightContext } from "../reportInput.ts";
import { limitsOffScaleSentence, limitWords } from "../sentences.ts";
import { measureNumber, type PartNumber, type PartTable, partSection } from "./partSection.ts";
import { LOAD } from "./partWords.ts";
import { planeFigure } from "./planeFigure.ts";

/** Motor and propeller: the current the motor gives and the propeller asks for against shaft speed, and where they meet. */
export function loadSection(context: FlightContext): Markup {
  const { load } = context.analysed.pictures;
  const { lines } = load;
  const id = `${context.id}-load`;
  const wrong = load.wrongSetting === null ? [] : [load.wrongSetting.text, LOAD.asLogged];
  return partSection({
    id,
    title: LOAD.title,
    meaning: [...wrong, ...context.meanings.load],
    figure: lines === null ? null : figure(`${id}-lines`, lines, load.isCurrentEstimated),
    why: load.why === null ? null : LOAD.notDrawn(load.why),
    numbers: numbers(context, load),
    tables: lines === null ? [] : [table(lines)],
  });
}

/** A wall further away than this many times the currents shown is named instead. */
const FARTHEST = 2.6;

function figure(id: string, lines: LoadLines, isEstimated: boolean): Markup {
  const { motor, propeller, propellerLow, propellerHigh } = lines;
  const walls = wallsOf(lines);
  const shownA = Math.max(lines.meetsA.value ?? 0, lines.staticA.value ?? 0);
  const isNear = ({ axis, value }: PlaneWall) => axis === "x" || value <= FARTHEST * shownA;
  const near = walls.filter(isNear);
  const heights = near.flatMap(({ axis, value }) => (axis === "y" ? [value] : []));
  const plane: Plane = {
    id: "load",
    x: numberAxis(LOAD.xAxis, propeller.speedRpm[0] ?? 0, propeller.speedRpm.at(-1) ?? 1),
    y: valueScale(0, Math.max(1.25 * shownA, ...heights), true),
    yTitle: lines.motorCount > 1 ? LOAD.yAxisOfOne : LOAD.yAxis,
    bands: [{ style: 2, x: propeller.speedRpm, low: propellerLow.currentA, high: propellerHigh.currentA }],
    dots: null,
    lines: [
      { id: "loadMotor", words: LOAD.motor, style: 1, trace: wholeTrace(motor.speedRpm, motor.currentA) },
      {
        id: "loadPropeller",
        words: LOAD.propeller,
        style: 2,
        trace: wholeTrace(propeller.speedRpm, propeller.currentA),
      },
    ],
    walls: near,
    marks: marksOf(lines),
  };
  const beyond = walls.filter((wall) => !isNear(wall)).map(({ words, source }) => `${words}, ${source}`);
  return planeFigure(id, LOAD.figure, plane, [
    plane.marks.some(({ shape }) => shape === "disc") ? `${LOAD.ring} ${LOAD.disc(isEstimated)}` : LOAD.ring,
    isPublished(lines) ? LOAD.publishedLine : LOAD.measuredLine,
    ...(beyond.length === 0 ? [] : [limitsOffScaleSentence(beyond)]),
  ]);
}

function wallsOf({ controllerA, powerLimitA, powerLimitW, maxRpm }: LoadLines): readonly PlaneWall[] {
  const wall = (
    axis: "x" | "y",
    value: number | null,
    words: string,
    source: string,
  ): readonly PlaneWall[] =>
    value === null ? [] : [{ axis, value, words: limitWords(words), source: limitSourceWords(source) }];
  return [
    ...wall("y", controllerA, `${plainNumber(controllerA ?? 0)} A`, "controller.continuousA"),
    ...wall("y", powerLimitA, `${plainNumber(powerLimitW ?? 0)} W`, "motor.maxPowerW"),
    ...wall("x", maxRpm, `${plainNumber(maxRpm ?? 0)} rev/min`, "propeller.maxRpm"),
  ];
}

function marksOf({ meetsRpm, meetsA, staticRpm, staticA }: LoadLines): readonly PlaneMark[] {
  const mark = (x: Quantity, y: Quantity, shape: PlaneMark["shape"], words: string): readonly PlaneMark[] =>
    isKnown(x) && isKnown(y)
      ? [{ x: x.value, y: y.value, shape, words, barX: endsOf(x), barY: endsOf(y) }]
      : [];
  return [...mark(meetsRpm, meetsA, "ring", LOAD.meet), ...mark(staticRpm, staticA, "disc", LOAD.staticRun)];
}

function endsOf(quantity: Quantity): readonly [number, number] | null {
  return isKnown(quantity) && quantity.low !== null && quantity.high !== null
    ? [quantity.low, quantity.high]
    : null;
}

function numbers(context: FlightContext, load: LoadView): readonly PartNumber[] {
  const { inFlight, offeredKv, lines } = load;
  const unloading = {
    words: LOAD.unloading,
    name: "inFlightShareOfStatic",
    value: inFlight.shareOfStatic,
    remark: isKnown(inFlight.shareOfStatic) ? LOAD.unloadingRemark : null,
  };
  const efficiency = {
    words: LOAD.flightEfficiency,
    name: "inFlightEfficiencyPct",
    value: inFlight.efficiencyPct,
  };
  return [
    measureNumber(context, "staticCurrentA"),
    measureNumber(context, "staticRpm"),
    ...(lines === null
      ? []
      : [
          { words: LOAD.meetSpeed, name: "linesMeetRpm", value: lines.meetsRpm },
          { words: LOAD.meetCurrent, name: "linesMeetA", value: lines.meetsA },
        ]),
    measureNumber(context, "propellerPowerCoefficient"),
    ...(lines !== null && isPublished(lines)
      ? [{ words: LOAD.published, name: "publishedPowerCoefficient", value: lines.coefficient }]
      : []),
    measureNumber(context, "motorEfficiencyPct"),
    ...(context.analysed.kind === "flight" ? [unloading, efficiency] : []),
    ...(offeredKv === null ? [] : [{ words: LOAD.offeredKv, name: "offeredKv", value: offeredKv }]),
  ];
}

function isPublished({ coefficient }: LoadLines): boolean {
  return isKnown(coefficient) && coefficient.basis === "predicted";
}

const TABLE_STEP = 4;

function table({ motor, propeller, propellerLow, propellerHigh }: LoadLines): PartTable {
  const amps = (value: number | undefined) =>
    value === undefined || Number.isNaN(value) || value < 0 ? LOAD.none : toPlace(value, -1);
  const rows = Array.from(propeller.speedRpm).flatMap((rpm, k) =>
    k % TABLE_STEP === 0
      ? [
          [
            toPlace(rpm, 0),
            amps(motor.currentA[k]),
            amps(propeller.currentA[k]),
            `${amps(propellerLow.currentA[k])} to ${amps(propellerHigh.currentA[k])}`,
          ],
        ]
      : [],
  );
  return { name: LOAD.figure, caption: LOAD.caption, heads: LOAD.heads, rows };
}
