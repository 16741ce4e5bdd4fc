import { type ChannelName, channelWords } from "../../base/channels/index.ts";
import { firstLines, type Notice } from "../../base/notices/index.ts";
import { minutesAndSeconds, plainNumber, type Quantity, quantityText } from "../../base/quantity/index.ts";

export function noChannel(channel: ChannelName): string {
  return `no ${channelWords(channel)} channel in this log`;
}

export const NOTHING_RUNS = "the motor never runs in this log";
export const NO_RUNNING_CHANNEL =
  "neither current nor shaft speed is logged, so motor running cannot be told";
export const BENCH_RUN = "this is a bench run: the log holds no sustained flight power";
export const STARTS_UNDER_POWER = "the log starts under power";
export const ENDS_UNDER_POWER = "the log ends under power";
export const TAKE_OFF_BEFORE_LOG = "the log starts after take-off";
export const LOG_ENDS_IN_FLIGHT = "the log ends before touchdown";
export const TOUCHDOWN_FROM_POWER =
  "touchdown cannot be seen from power alone: it lies between the end of flight power and the end of motor running";

export function startsUnderPower(line: number, isAfterHole: boolean): Notice {
  const where = isAfterHole ? "After the hole the log" : "The log";
  return {
    code: "starts-under-power",
    severity: "warning",
    text: `${where} starts under power at line ${line}: what was used before is not known, so charge and energy are lower bounds.`,
    lines: [line],
  };
}

export function endsUnderPower(line: number, isAtHole: boolean): Notice {
  const where = isAtHole ? "Before the hole the log" : "The log";
  return {
    code: "ends-under-power",
    severity: "warning",
    text: `${where} ends under power at line ${line}: what was used after is not known, so charge and energy are lower bounds.`,
    lines: [line],
  };
}

/** Pauses named in one sentence; the notice lists the lines of more. */
const SHOWN_PAUSES = 3;

export interface BridgedPause {
  readonly pauseS: number;
  readonly lineBefore: number;
  readonly lineAfter: number;
}

export function pausesBridged(pauses: readonly BridgedPause[]): Notice {
  const texts = pauses
    .slice(0, SHOWN_PAUSES)
    .map(
      ({ pauseS, lineBefore, lineAfter }) =>
        `${minutesAndSeconds(pauseS)} between lines ${lineBefore} and ${lineAfter}`,
    );
  const more = pauses.length > SHOWN_PAUSES ? ` and ${pauses.length - SHOWN_PAUSES} more times` : "";
  return {
    code: "pause-bridged",
    severity: "note",
    text: `The motor rests for ${texts.join(", for ")}${more}; the pack volts did not jump, so this counts as one flight.`,
    count: pauses.length,
    lines: firstLines(pauses.flatMap(({ lineBefore, lineAfter }) => [lineBefore, lineAfter])),
  };
}

export const NO_REST_BEFORE =
  "the log holds no rest of 2 s and 3 rows with the motor off before the first run";
export const NO_REST_AFTER = "the log holds no rest of 10 s after the motor stopped";
export const NO_CELL_COUNT = "the number of cells is not known: give pack.cells in the aircraft file";
export const NO_FULL_THROTTLE_ON_GROUND = "the log holds no full throttle held for 1.5 s on the ground";
export const ALTITUDE_CHANGES_THERE =
  "altitude changes by more than 2 m while full throttle is held before take-off";
export const PLATEAU_HOLDS_NO_VALUE = "the full-throttle plateau holds too few values";
export const NO_FLYING_MASS = "the aircraft file gives no flyingMassKg";
export const NO_CONTROLLER_RATING = "the aircraft file gives no controller.continuousA";
export const NO_CONTROLLER_LIMIT = "the aircraft file gives no controller.limitC";
export const NO_CAPACITY = "the aircraft file gives no pack.capacityMah";
export const SAG_WITHOUT_REST_AFTER =
  "there is no rest after the flight, so this counts from the volts at rest before and is an upper bound";
export const START_TAKEN_AS_FULL =
  "nothing shows the charge at the start: taken as full, so this is an upper bound; state it with --start-pct N";
export const START_FROM_REST_VOLTS =
  "the pack was not full at the start: its volts at rest give the charge only as a band; state it with --start-pct N";
export const AMBIENT_STATED = "as stated";
export const AMBIENT_FROM_CHANNEL = "as logged";
export const AMBIENT_FROM_CONTROLLER = "taken from the controller before its first run";
export const NO_AMBIENT = "the air temperature of the day is not known: state it with --ambient C";

export function lagNotCorrected(): string {
  return "as logged; the lag of the probe behind the controller is not corrected";
}

export function lagOnTop(lagC: number): string {
  return `as logged; the controller itself was about ${lagC.toFixed(1)} °C hotter than its probe`;
}

export function hotDayFrom(hotDayC: number, ambientC: number, source: string): string {
  return `the same flight at ${plainNumber(hotDayC)} °C instead of ${plainNumber(ambientC)} °C, ${source}`;
}

export function cellCountDoubt(cells: number, packV: number, likely: readonly number[]): Notice {
  const perCell = plainNumber(packV / cells);
  const options = likely.map((count) => `--cells ${count}`);
  const way =
    likely.length === 0 ? "Check the unit of the volts." : `Say which it is: ${likely.join(" or ")} cells.`;
  return {
    code: "cell-count",
    severity: "question",
    text: `The pack rests at ${plainNumber(packV)} V: with ${cells} cells that is ${perCell} V a cell, which does not fit. ${way}`,
    options,
  };
}

export const CUT_MAY_BE_HIGHER = "the log is cut, so it may have gone higher";
export const CUT_MAY_BE_LOWER = "the log is cut, so it may have gone lower";
export const MEAN_OF_A_PART = "the log is cut, so this is the mean of a part of the flight";

export function ofLoggedPart(why: string): string {
  return `of the part that was logged: ${why}`;
}

/** Nothing is changed by it: a charger's put-back tells which of the two is right. */
export function counterDisagrees(countedMah: number, summed: Quantity): Notice {
  return {
    code: "charge-counter-differs",
    severity: "warning",
    text: `The charge counter says ${plainNumber(countedMah)} mAh, the logged current adds up to ${quantityText(summed)}. The sum is used. What the charger puts back tells which is right.`,
  };
}

/** What a charge left that cannot be rests on; a start from the volts at rest rests on the count of cells, too. */
export function chargeLeftRestsOn(why: string | undefined): string {
  const cells = why === START_FROM_REST_VOLTS ? "the cell count, " : "";
  return `${cells}pack.capacityMah, --start-pct and sensors.currentScale`;
}

export function impossibleChargeLeft(chargeLeftPct: number, startedFrom?: string): Notice {
  const why = chargeLeftPct < 0 ? "a pack cannot give more than it holds" : "a pack holds 100 % at most";
  return {
    code: "charge-left-doubtful",
    severity: "warning",
    text: `Charge left comes to ${plainNumber(chargeLeftPct)} %, but ${why}. Check ${chargeLeftRestsOn(startedFrom)}.`,
  };
}

export function restVoltsDisagree(
  restCellV: number,
  lowPct: number,
  highPct: number,
  chargeLeftPct: Quantity,
): Notice {
  const band = `${Math.floor(lowPct)} to ${Math.ceil(highPct)} %`;
  return {
    code: "rest-volts-differ",
    severity: "warning",
    text: `Resting after landing at ${restCellV.toFixed(2)} V a cell, the pack holds ${band}; the charge used leaves ${quantityText(chargeLeftPct)}. Check capacity, the current sensor and the pack's age before you trust the timer.`,
  };
}

export const NO_FIRST_READING = "no reading in the first five seconds";
