import { type ChannelName, MOST_CELLS } from "../../base/channels/index.ts";
import type { ColumnView } from "./columnView.ts";
import { headerUnit } from "./columnView.ts";
import {
  AIRSPEED_WORDS,
  BOARD_PART_WORDS,
  ELECTRICAL_WORDS,
  GROUND_WORDS,
  POWER_STAGE_WORDS,
} from "./wordLists.ts";

/** A column that may hold a channel, before its unit is known. */
export interface Candidate {
  readonly channel: ChannelName;
  readonly view: ColumnView;
  /** Higher fits better; candidates of one channel are compared. */
  readonly score: number;
  readonly why: string;
  /** Speed counted per electrical turn: has to be divided by the pole pairs. */
  readonly isElectrical: boolean;
  /** Current in the motor, not out of the pack. */
  readonly isMotorCurrent: boolean;
  /** Volts of one cell without its number: the pack's are so many times as it has cells. */
  readonly isPerCell?: boolean;
  /** The user named the column. */
  readonly isGiven: boolean;
}

/** A candidate, or in words why the column holds no channel. */
export type Candidacy = Candidate | { readonly reason: string };

const FROM_SOURCE = 30;
const FROM_GENERIC = 15;
const FROM_CONTROLLER = 12;
const FROM_UNIT = 10;
/** Volts of one cell serve for the pack's only when no column is. */
const PER_CELL = -100;

export function isCandidate(each: Candidacy): each is Candidate {
  return "channel" in each;
}

/** What a column may hold by its header. `firstCell`: number that the log gives its first cell, 0 or 1. */
export function candidacyOf(view: ColumnView, firstCell: number): Candidacy {
  if (view.column.filledCount === 0) return { reason: "every cell is empty" };
  if (view.excluded !== null) return { reason: view.excluded };
  if (view.quantity === null) return { reason: "the header names no quantity that is used here" };
  if (view.quantity === "index") return { reason: "a running number of the rows, not a time" };
  if (view.quantity === "time" || view.quantity === "date")
    return { reason: "a clock, but not the one that was used" };
  if (view.range.count === 0) return { reason: "no cell holds a number" };
  switch (view.quantity) {
    case "voltage":
      return voltage(view, firstCell);
    case "current":
      return current(view);
    case "rotation":
      return rotation(view);
    case "temperature":
      return temperature(view);
    case "throttle":
      return candidate(view, "throttle", FROM_SOURCE, `"throttle" in the header`);
    case "altitude":
      return altitude(view);
    case "speed":
      return speed(view);
    case "charge":
      return charge(view);
  }
}

/** Logs number their cells from 0 or from 1. */
export function cellCountingStart(views: readonly ColumnView[]): number {
  return views.some((view) => view.sources.has("cell") && view.name.number === 0) ? 0 : 1;
}

function candidate(view: ColumnView, channel: ChannelName, score: number, why: string): Candidate {
  const unitScore = view.name.units.length > 0 ? FROM_UNIT : 0;
  return {
    channel,
    view,
    score: score + unitScore,
    why,
    isElectrical: false,
    isMotorCurrent: false,
    isGiven: false,
  };
}

function has(view: ColumnView, words: readonly string[]): boolean {
  return view.name.words.some((word) => words.includes(word));
}

function voltage(view: ColumnView, firstCell: number): Candidacy {
  const { sources, name } = view;
  if (sources.has("receiver"))
    return { reason: "the supply of receiver, servos or electronics, not of the drive" };
  if (sources.has("phase")) return { reason: "a voltage of the motor's windings" };
  if (sources.has("cell")) return cell(view, name.number === null ? null : name.number + 1 - firstCell);
  if (sources.has("pack"))
    return candidate(view, "packVoltage", FROM_SOURCE, "a voltage of the pack by its header");
  if (sources.has("controller")) {
    return candidate(
      view,
      "packVoltage",
      FROM_CONTROLLER,
      "the voltage at the controller, which is the pack's",
    );
  }
  if (sources.has("motor")) return candidate(view, "packVoltage", 2, "a voltage of the motor by its header");
  return candidate(view, "packVoltage", FROM_GENERIC, "a voltage by its header");
}

function cell(view: ColumnView, number: number | null): Candidacy {
  if (number === null) return unnumberedCell(view);
  if (number < 1 || number > MOST_CELLS) return { reason: `there is no cell ${number} here` };
  if (view.range.isDead) return { reason: "every value is zero: no cell on this lead" };
  const isLetterOnly = !view.name.words.some((word) => word.length > 1 && !/^\d+$/.test(word));
  const isCellSized = view.range.median > 1.5 && (view.range.median < 5.5 || view.range.median > 1500);
  if (isLetterOnly && !isCellSized) return { reason: "the header names no quantity that is used here" };
  return candidate(view, `cellVoltage${number}`, FROM_SOURCE, `the voltage of cell ${number} by its header`);
}

/** The voltage of any one cell, or of their mean: the pack's when nothing better tells it. */
function unnumberedCell(view: ColumnView): Candidacy {
  const volts =
    view.range.median * (headerUnit(view, "voltage")?.factor ?? (view.range.median > 1500 ? 1e-3 : 1));
  if (!(volts > 2 && volts < 5)) return { reason: "a cell voltage without the number of the cell" };
  return {
    ...candidate(view, "packVoltage", PER_CELL, "the voltage of one cell by its header"),
    isPerCell: true,
  };
}

function current(view: ColumnView): Candidacy {
  const { sources } = view;
  if (sources.has("receiver"))
    return { reason: "the current of receiver, servos or electronics, not of the drive" };
  if (sources.has("phase")) return { reason: "a current in the motor's windings, not out of the pack" };
  if (sources.has("pack"))
    return candidate(view, "current", FROM_SOURCE, "a current out of the pack by its header");
  if (sources.has("motor")) {
    return { ...candidate(view, "current", 2, "a current of the motor by its header"), isMotorCurrent: true };
  }
  if (sources.has("controller"))
    return candidate(view, "current", FROM_CONTROLLER, "a current at the controller by its header");
  return candidate(view, "current", FROM_GENERIC, "a current by its header");
}

function rotation(view: ColumnView): Candidacy {
  const { sources } = view;
  if (has(view, ELECTRICAL_WORDS)) {
    return { ...candidate(view, "shaftSpeed", 1, "an electrical speed by its header"), isElectrical: true };
  }
  if (sources.has("propeller"))
    return candidate(view, "shaftSpeed", FROM_SOURCE + 2, "a speed of the propeller by its header");
  if (sources.has("motor"))
    return candidate(view, "shaftSpeed", FROM_SOURCE - 5, "a speed of the motor by its header");
  if (sources.has("controller")) return candidate(view, "shaftSpeed", 5, "a speed told by the controller");
  return candidate(view, "shaftSpeed", FROM_GENERIC, "a speed of rotation by its header");
}

function temperature(view: ColumnView): Candidacy {
  const { sources } = view;
  if (sources.has("controller") || has(view, BOARD_PART_WORDS)) {
    const isPart = has(view, BOARD_PART_WORDS);
    const score = has(view, POWER_STAGE_WORDS) ? FROM_SOURCE + 5 : isPart ? 18 : FROM_SOURCE;
    const why = isPart
      ? "a temperature on the controller's board"
      : "a temperature of the controller by its header";
    return candidate(view, "controllerTemperature", score, why);
  }
  if (sources.has("motor"))
    return candidate(view, "motorTemperature", FROM_SOURCE, "a temperature of the motor by its header");
  if (sources.has("air"))
    return candidate(view, "ambientTemperature", FROM_SOURCE, "a temperature of the air by its header");
  if (sources.has("receiver")) return { reason: "the temperature of receiver or sensor electronics" };
  if (sources.has("pack") || sources.has("cell")) {
    return candidate(view, "packTemperature", FROM_SOURCE, "a temperature of the pack by its header");
  }
  return candidate(
    view,
    "controllerTemperature",
    8,
    "a temperature without a place: taken as the controller's",
  );
}

function altitude(view: ColumnView): Candidacy {
  const words = view.name.words;
  if (words.includes("position")) {
    return candidate(view, "altitude", 2, "the upward position, taken as altitude in metres");
  }
  const isNamed = words.some((word) =>
    [
      "altitude",
      "alt",
      "height",
      "hohe",
      "hoehe",
      "altitud",
      "hauteur",
      "altura",
      "baroalt",
      "agl",
      "msl",
      "elevation",
    ].includes(word),
  );
  if (!isNamed) return { reason: "a length, but the header does not say that it is a height" };
  return candidate(
    view,
    "altitude",
    view.sources.has("satellite") ? FROM_GENERIC : FROM_SOURCE,
    "an altitude by its header",
  );
}

function speed(view: ColumnView): Candidacy {
  if (has(view, GROUND_WORDS))
    return candidate(view, "groundSpeed", FROM_SOURCE, "a speed over ground by its header");
  if (has(view, AIRSPEED_WORDS))
    return candidate(view, "airspeed", FROM_SOURCE, "a speed through the air by its header");
  const isTravel = headerUnit(view, "velocity") !== null;
  if (isTravel) return candidate(view, "groundSpeed", 5, "a speed of travel, taken as over ground");
  if (view.range.high99 > 400)
    return candidate(view, "shaftSpeed", 5, "a speed too large for travel, taken as rotation");
  return { reason: "a speed that could be of air, ground or motor" };
}

function charge(view: ColumnView): Candidacy {
  if (view.range.risingShare < 0.9)
    return { reason: "a charge that does not only grow, so no counter of charge used" };
  return candidate(view, "chargeCounter", FROM_SOURCE, "a charge that grows row by row");
}
