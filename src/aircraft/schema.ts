import * as v from "valibot";
import { CHANNEL_NAMES, type ChannelName, channelWords } from "../base/channels/index.ts";
import { DEFAULTS, type DefaultPath, defaultSource, FULL_CELL_V } from "./defaults.ts";
import { NUMBER_KEYS, type NumberKey, type NumberKeyPath } from "./keys.ts";

const LONGEST_TEXT = 200;

/** The number at a key of the table, with its range, description and example. */
function number(path: NumberKeyPath) {
  const key: NumberKey = NUMBER_KEYS[path];
  const unit = key.unit === "1" ? "No unit." : `Unit: ${key.unit}.`;
  const description = `${key.what}. ${unit}${defaultSentence(path)}`;
  const base = key.isWhole ? v.pipe(v.number(), v.integer()) : v.number();
  return v.pipe(
    base,
    v.minValue(key.low),
    v.maxValue(key.high),
    v.description(description),
    v.metadata({ examples: [key.example] }),
  );
}

function optionalNumber(path: Exclude<NumberKeyPath, DefaultPath>) {
  return v.optional(number(path));
}

function numberOrDefault(path: NumberKeyPath & DefaultPath) {
  return v.optional(number(path), DEFAULTS[path].value);
}

function defaultSentence(path: string): string {
  const source = defaultSource(path);
  return source === null ? "" : ` When absent: ${source}.`;
}

function text(description: string, example: string) {
  return v.pipe(
    v.string(),
    v.minLength(1),
    v.maxLength(LONGEST_TEXT),
    v.description(description),
    v.metadata({ examples: [example] }),
  );
}

const pack = v.pipe(
  v.strictObject({
    cells: number("pack.cells"),
    capacityMah: optionalNumber("pack.capacityMah"),
    maxContinuousA: optionalNumber("pack.maxContinuousA"),
    fullCellV: optionalNumber("pack.fullCellV"),
    minLoadedCellV: optionalNumber("pack.minLoadedCellV"),
    chemistry: v.optional(
      v.pipe(
        v.picklist(["lipo", "lihv", "liion", "life"]),
        v.description(
          `Cell chemistry; it sets the volts of a full cell when pack.fullCellV is absent: ${fullCellList()}.`,
        ),
        v.metadata({ examples: ["lipo"] }),
      ),
      DEFAULTS["pack.chemistry"].value,
    ),
    resistanceMohm: optionalNumber("pack.resistanceMohm"),
    healthPct: numberOrDefault("pack.healthPct"),
    limitC: optionalNumber("pack.limitC"),
  }),
  v.description("The flight pack as connected: cells in series, capacity of all parallel packs together."),
  v.metadata({ examples: [{ cells: 8, capacityMah: 5000 }] }),
);

function fullCellList(): string {
  return Object.entries(FULL_CELL_V)
    .map(([chemistry, volts]) => `${chemistry} ${volts} V`)
    .join(", ");
}

const controller = v.pipe(
  v.strictObject({
    continuousA: optionalNumber("controller.continuousA"),
    burstA: optionalNumber("controller.burstA"),
    burstS: optionalNumber("controller.burstS"),
    limitC: optionalNumber("controller.limitC"),
    resistanceMohm: optionalNumber("controller.resistanceMohm"),
  }),
  v.description("The speed controller: what it may carry and how warm it may get."),
  v.metadata({ examples: [{ continuousA: 100, limitC: 100 }] }),
);

const motor = v.pipe(
  v.strictObject({
    kv: optionalNumber("motor.kv"),
    windingOhm: optionalNumber("motor.windingOhm"),
    noLoadA: optionalNumber("motor.noLoadA"),
    maxPowerW: optionalNumber("motor.maxPowerW"),
    limitC: optionalNumber("motor.limitC"),
    polePairs: optionalNumber("motor.polePairs"),
    count: numberOrDefault("motor.count"),
  }),
  v.description("The motor: its constants and its limits."),
  v.metadata({ examples: [{ kv: 230, polePairs: 7 }] }),
);

const propeller = v.pipe(
  v.strictObject({
    diameterIn: optionalNumber("propeller.diameterIn"),
    pitchIn: optionalNumber("propeller.pitchIn"),
    blades: numberOrDefault("propeller.blades"),
    family: v.optional(text("Kind of propeller in your own words.", "thin electric")),
    maxRpm: optionalNumber("propeller.maxRpm"),
  }),
  v.description("The propeller fitted."),
  v.metadata({ examples: [{ diameterIn: 18, pitchIn: 10, blades: 2 }] }),
);

const planned = v.pipe(
  v.strictObject({
    staticCurrentA: optionalNumber("planned.staticCurrentA"),
    staticPowerW: optionalNumber("planned.staticPowerW"),
    staticRpm: optionalNumber("planned.staticRpm"),
    meanCurrentA: optionalNumber("planned.meanCurrentA"),
    flightTimeS: optionalNumber("planned.flightTimeS"),
    chargeUsedMah: optionalNumber("planned.chargeUsedMah"),
    minCellV: optionalNumber("planned.minCellV"),
    controllerPeakC: optionalNumber("planned.controllerPeakC"),
  }),
  v.description("The power budget you planned; each line given is judged, the others are not."),
  v.metadata({ examples: [{ staticCurrentA: 55, flightTimeS: 360 }] }),
);

const field = v.pipe(
  v.strictObject({
    ambientC: optionalNumber("field.ambientC"),
    hotDayC: numberOrDefault("field.hotDayC"),
    elevationM: numberOrDefault("field.elevationM"),
  }),
  v.description("The place where you fly."),
  v.metadata({ examples: [{ hotDayC: 35, elevationM: 120 }] }),
);

const sensors = v.pipe(
  v.strictObject({
    currentAccuracyPct: numberOrDefault("sensors.currentAccuracyPct"),
    voltageAccuracyPct: numberOrDefault("sensors.voltageAccuracyPct"),
    temperatureAccuracyC: numberOrDefault("sensors.temperatureAccuracyC"),
    currentScale: numberOrDefault("sensors.currentScale"),
    rpmDivisor: numberOrDefault("sensors.rpmDivisor"),
  }),
  v.description("How far the sensors can be trusted, and corrections to what they write."),
  v.metadata({ examples: [{ currentAccuracyPct: 2 }] }),
);

type ChannelTexts = Record<ChannelName, ReturnType<typeof channelText>>;

function channelText(description: string, example: string) {
  return v.optional(text(description, example));
}

function channelTexts(describe: (words: string) => string, example: string): ChannelTexts {
  const entries = CHANNEL_NAMES.map((name) => [name, channelText(describe(channelWords(name)), example)]);
  return Object.fromEntries(entries) as ChannelTexts;
}

const reading = v.strictObject({
  headerSignature: text("Signature of the header these answers belong to, as a check prints it.", "5c0d1a2b"),
  columns: v.optional(
    v.pipe(
      v.strictObject(channelTexts((words) => `Header of the column with ${words}, or #N.`, "U [V]")),
      v.description("Channel name to the header of its column, or #N for the Nth column."),
      v.metadata({ examples: [{ packVoltage: "U [V]" }] }),
    ),
    {},
  ),
  units: v.optional(
    v.pipe(
      v.strictObject(channelTexts((words) => `Unit of ${words} in the log.`, "mV")),
      v.description("Channel name to its unit in the log."),
      v.metadata({ examples: [{ packVoltage: "mV" }] }),
    ),
    {},
  ),
  rateHz: v.optional(
    v.pipe(
      v.nullable(number("readings.rateHz")),
      v.description(
        "Rows per second, for a log without a usable clock; null when the clock is good. Unit: Hz.",
      ),
      v.metadata({ examples: [5] }),
    ),
    null,
  ),
  decimalMark: v.optional(
    v.pipe(
      v.nullable(v.picklist(["point", "comma"])),
      v.description("Decimal mark of the log; null to find it."),
      v.metadata({ examples: ["comma"] }),
    ),
    null,
  ),
  dateOrder: v.optional(
    v.pipe(
      v.nullable(v.picklist(["dmy", "mdy", "ymd"])),
      v.description("Order of day, month and year in the log; null to find it."),
      v.metadata({ examples: ["dmy"] }),
    ),
    null,
  ),
});

/** The aircraft file. Only `name` and `pack.cells` must be there; a key it does not know is an error. */
export const aircraftSchema = v.pipe(
  v.strictObject({
    $schema: v.optional(
      text("Where an editor finds this schema; it plays no part in the analysis.", "./aircraft.schema.json"),
    ),
    name: text("Name of the aircraft as reports show it.", "Tern"),
    flyingMassKg: optionalNumber("flyingMassKg"),
    pack,
    controller: v.optional(controller, {}),
    motor: v.optional(motor, {}),
    propeller: v.optional(propeller, {}),
    planned: v.optional(planned, {}),
    reservePct: numberOrDefault("reservePct"),
    field: v.optional(field, {}),
    sensors: v.optional(sensors, {}),
    readings: v.optional(
      v.pipe(
        v.array(reading),
        v.description("Answers given once about a log, kept for every log with the same header."),
        v.metadata({ examples: [[{ headerSignature: "5c0d1a2b", columns: { packVoltage: "U [V]" } }]] }),
      ),
      [],
    ),
  }),
  v.title("tallywatt aircraft file"),
  v.description("What is fitted in one electric model aircraft, and the power budget that was planned."),
  v.metadata({ examples: [{ name: "Tern", pack: { cells: 8 } }] }),
);

export type AircraftFile = v.InferOutput<typeof aircraftSchema>;

/** A schema below its wrappings: what may stand there. */
export interface SchemaShape {
  readonly wrapped?: SchemaShape;
  readonly pipe?: readonly unknown[];
  readonly entries?: Readonly<Record<string, SchemaShape>>;
  readonly item?: SchemaShape;
  readonly options?: readonly unknown[];
}

/** A value that the schema does not allow, and where it stands. */
export interface ValueIssue {
  readonly path: readonly (string | number)[];
  /** What the file says; undefined when the key is missing. */
  readonly input: unknown;
}

export type Validated =
  | { readonly state: "right"; readonly file: AircraftFile }
  | { readonly state: "wrong"; readonly issues: readonly ValueIssue[] };

/** Holds plain data against the schema and fills in the defaults. */
export function validate(value: unknown): Validated {
  const result = v.safeParse(aircraftSchema, value);
  if (result.success) return { state: "right", file: result.output };
  const issues = result.issues.map(({ path, input }) => ({
    path: (path ?? []).map((item) => item.key as string | number),
    input,
  }));
  return { state: "wrong", issues };
}
