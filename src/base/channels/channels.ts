/** The quantities a log can hold, each in one fixed unit once read. */
export type CellChannel = `cellVoltage${number}`;
export type ChannelName =
  | "time"
  | "packVoltage"
  | "packVoltage1"
  | "packVoltage2"
  | CellChannel
  | "current"
  | "shaftSpeed"
  | "controllerTemperature"
  | "motorTemperature"
  | "packTemperature"
  | "ambientTemperature"
  | "throttle"
  | "altitude"
  | "airspeed"
  | "groundSpeed"
  | "chargeCounter";

/** Most cells in series that a pack of this trade has (common practice, no published source). */
export const MOST_CELLS = 16;

export interface ChannelFacts {
  /** Unit of the channel after reading. */
  readonly unit: string;
  /** Plain words for text, lower case. */
  readonly words: string;
  /** Outside this a sensor cannot mean it: such a value is masked. Inclusive, in `unit`. */
  readonly possible: readonly [number, number];
  /** Where a healthy log of this trade stays: used to choose units and columns. Inclusive, in `unit`. */
  readonly plausible: readonly [number, number];
  /** Why these limits. */
  readonly reason: string;
}

const TEMPERATURE_REASON =
  "an open probe often reads -40 degC, and above 250 degC nothing here survives (common practice, no published source)";

const PART_OF_PACK = {
  unit: "V",
  possible: [0.5, 60],
  plausible: [3, 40],
  reason: "one of two packs in series: 1 to 8 lithium cells at 2.5 to 4.4 V a cell, with room",
} as const;

const FIXED: Readonly<Record<Exclude<ChannelName, CellChannel>, ChannelFacts>> = {
  time: {
    unit: "s",
    words: "time",
    possible: [-Number.MAX_VALUE, Number.MAX_VALUE],
    plausible: [0, 86_400],
    reason: "a flight log is shorter than a day",
  },
  packVoltage: {
    unit: "V",
    words: "pack voltage",
    possible: [0.5, 80],
    plausible: [5, 70],
    reason: "2 to 16 lithium cells in series at 2.5 to 4.4 V a cell, with room",
  },
  packVoltage1: { ...PART_OF_PACK, words: "first pack's voltage" },
  packVoltage2: { ...PART_OF_PACK, words: "second pack's voltage" },
  current: {
    unit: "A",
    words: "current",
    possible: [-50, 1000],
    plausible: [-5, 400],
    reason: "hobby current sensors end below 1000 A; regenerative braking gives small negative values",
  },
  shaftSpeed: {
    unit: "rev/min",
    words: "shaft speed",
    possible: [0, 60_000],
    plausible: [0, 20_000],
    reason: "propellers of this size turn below 20 000 rev/min; 65 535 is a counter's overflow mark",
  },
  controllerTemperature: {
    unit: "degC",
    words: "controller temperature",
    possible: [-39, 250],
    plausible: [-20, 150],
    reason: TEMPERATURE_REASON,
  },
  motorTemperature: {
    unit: "degC",
    words: "motor temperature",
    possible: [-39, 250],
    plausible: [-20, 180],
    reason: TEMPERATURE_REASON,
  },
  packTemperature: {
    unit: "degC",
    words: "pack temperature",
    possible: [-39, 250],
    plausible: [-20, 90],
    reason: TEMPERATURE_REASON,
  },
  ambientTemperature: {
    unit: "degC",
    words: "air temperature",
    possible: [-60, 70],
    plausible: [-30, 50],
    reason: "weather where models are flown",
  },
  throttle: {
    unit: "%",
    words: "throttle",
    possible: [-200, 200],
    plausible: [-150, 150],
    reason: "radios write 0 to 100 %, some -100 to 100 or to 150 %",
  },
  altitude: {
    unit: "m",
    words: "altitude",
    possible: [-1000, 9000],
    plausible: [-500, 6000],
    reason: "from below sea level to the highest flying fields",
  },
  airspeed: {
    unit: "m/s",
    words: "airspeed",
    possible: [-10, 250],
    plausible: [0, 120],
    reason: "large model aircraft stay below 120 m/s",
  },
  groundSpeed: {
    unit: "m/s",
    words: "ground speed",
    possible: [-10, 300],
    plausible: [0, 150],
    reason: "airspeed plus wind",
  },
  chargeCounter: {
    unit: "mAh",
    words: "charge counter",
    possible: [-1000, 200_000],
    plausible: [0, 60_000],
    reason: "larger than any pack of this trade",
  },
};

const CELL: ChannelFacts = {
  unit: "V",
  words: "cell voltage",
  possible: [0.5, 5],
  plausible: [2.5, 4.4],
  reason: "a lithium cell between deep discharge and the high-voltage full charge of 4.35 V",
};

export function isCellChannel(channel: ChannelName): channel is CellChannel {
  return channel.startsWith("cellVoltage");
}

/** Unit, words and limits of a channel. */
export function channelFacts(channel: ChannelName): ChannelFacts {
  return isCellChannel(channel) ? CELL : FIXED[channel];
}

/** The channel's name in plain words: "pack voltage", "cell 3 voltage". */
export function channelWords(channel: ChannelName): string {
  if (!isCellChannel(channel)) return FIXED[channel].words;
  return `cell ${channel.slice("cellVoltage".length)} voltage`;
}

/** Every channel name a user may type, cells 1 to 16. */
export const CHANNEL_NAMES: readonly ChannelName[] = [
  "time",
  "packVoltage",
  "packVoltage1",
  "packVoltage2",
  ...Array.from({ length: MOST_CELLS }, (_, index): ChannelName => `cellVoltage${index + 1}`),
  "current",
  "shaftSpeed",
  "controllerTemperature",
  "motorTemperature",
  "packTemperature",
  "ambientTemperature",
  "throttle",
  "altitude",
  "airspeed",
  "groundSpeed",
  "chargeCounter",
];

export function isChannelName(text: string): text is ChannelName {
  return (CHANNEL_NAMES as readonly string[]).includes(text);
}
