import type { LogStyle, StyleColumn, WrittenUnit } from "./logStyle.ts";

const column = (header: string, unit: WrittenUnit, unitText?: string): StyleColumn =>
  unitText === undefined ? { header, unit } : { header, unit, unitText };

const BASE = {
  encoding: "utf-8",
  newline: "\n",
  delimiter: ",",
  decimalMark: ".",
  preamble: [],
  hasUnitsRow: false,
  quotesHeader: false,
  missing: "",
  extras: {},
} as const;

const plainWords: LogStyle = {
  ...BASE,
  name: "plain words",
  clock: "seconds",
  clockHeaders: ["Time (s)"],
  columns: {
    packVoltage: column("Pack voltage (V)", "V"),
    current: column("Current (A)", "A"),
    shaftSpeed: column("Shaft speed (rev/min)", "rev/min"),
    controllerTemperature: column("Controller temperature (degC)", "degC"),
    motorTemperature: column("Motor temperature (degC)", "degC"),
    packTemperature: column("Pack temperature (degC)", "degC"),
    ambientTemperature: column("Air temperature (degC)", "degC"),
    throttle: column("Throttle (%)", "%"),
    altitude: column("Altitude (m)", "m"),
    airspeed: column("Airspeed (m/s)", "m/s"),
    groundSpeed: column("Ground speed (m/s)", "m/s"),
    chargeCounter: column("Charge used (mAh)", "mAh"),
  },
};

const symbolsWithDecimalComma: LogStyle = {
  ...BASE,
  name: "symbols with decimal comma",
  encoding: "utf-8-bom",
  newline: "\r\n",
  delimiter: ";",
  decimalMark: ",",
  clock: "seconds",
  clockHeaders: ["t [s]"],
  columns: {
    packVoltage: column("U [V]", "V"),
    current: column("I [A]", "A"),
    shaftSpeed: column("n [1/min]", "rev/min"),
    controllerTemperature: column("T controller [°C]", "degC"),
    motorTemperature: column("T motor [°C]", "degC"),
    packTemperature: column("T pack [°C]", "degC"),
    ambientTemperature: column("T air [°C]", "degC"),
    throttle: column("Throttle [%]", "%"),
    altitude: column("Altitude [m]", "m"),
    airspeed: column("Airspeed [m/s]", "m/s"),
    groundSpeed: column("Ground speed [m/s]", "m/s"),
    chargeCounter: column("Q used [mAh]", "mAh"),
  },
};

const tabsWithUnitsRow: LogStyle = {
  ...BASE,
  name: "tabs with a units row",
  delimiter: "\t",
  preamble: ["# Recording of the power system", "# one line per sample", ""],
  hasUnitsRow: true,
  clock: "milliseconds",
  clockHeaders: ["time"],
  clockUnitText: "ms",
  columns: {
    packVoltage: column("pack voltage", "mV", "mV"),
    current: column("pack current", "mA", "mA"),
    shaftSpeed: column("propeller speed", "rev/min", "rev/min"),
    controllerTemperature: column("controller temperature", "degC", "degC"),
    motorTemperature: column("motor temperature", "degC", "degC"),
    packTemperature: column("pack temperature", "degC", "degC"),
    ambientTemperature: column("air temperature", "degC", "degC"),
    throttle: column("throttle", "%", "%"),
    altitude: column("altitude", "m", "m"),
    airspeed: column("airspeed", "m/s", "m/s"),
    groundSpeed: column("ground speed", "m/s", "m/s"),
    chargeCounter: column("used charge", "mAh", "mAh"),
  },
};

const pipesInFahrenheit: LogStyle = {
  ...BASE,
  name: "pipes in Fahrenheit",
  encoding: "windows-1252",
  newline: "\r\n",
  delimiter: "|",
  clock: "clockFraction",
  clockHeaders: ["Clock"],
  columns: {
    packVoltage: column("Battery V", "V"),
    current: column("Battery A", "A"),
    shaftSpeed: column("Propeller RPM", "rev/min"),
    controllerTemperature: column("Controller °F", "degF"),
    motorTemperature: column("Motor °F", "degF"),
    packTemperature: column("Battery °F", "degF"),
    ambientTemperature: column("Air °F", "degF"),
    throttle: column("Throttle %", "%"),
    altitude: column("Altitude ft", "ft"),
    airspeed: column("Airspeed km/h", "km/h"),
    groundSpeed: column("Ground speed km/h", "km/h"),
    chargeCounter: column("Used mAh", "mAh"),
  },
};

const paddedSpacesInKelvin: LogStyle = {
  ...BASE,
  name: "padded spaces in kelvin",
  delimiter: " ",
  missing: "nan",
  clock: "seconds",
  clockHeaders: ["time_s"],
  columns: {
    packVoltage: column("pack_V", "V"),
    current: column("pack_A", "A"),
    shaftSpeed: column("shaft_rpm", "rev/min"),
    controllerTemperature: column("controller_K", "K"),
    motorTemperature: column("motor_K", "K"),
    packTemperature: column("pack_temp_K", "K"),
    ambientTemperature: column("air_K", "K"),
    throttle: column("throttle", "share"),
    altitude: column("altitude_m", "m"),
    airspeed: column("airspeed_km/h", "km/h"),
    groundSpeed: column("groundspeed_km/h", "km/h"),
    chargeCounter: column("used_mAh", "mAh"),
  },
};

const dateAndClockWithExtras: LogStyle = {
  ...BASE,
  name: "date and clock with extra columns",
  clock: "dateAndClock",
  clockHeaders: ["Date", "Time of day"],
  columns: {
    packVoltage: column("Pack volts [V]", "V"),
    current: column("Pack amps [A]", "A"),
    shaftSpeed: column("Motor speed [rpm]", "rev/min"),
    controllerTemperature: column("ESC temp [°C]", "degC"),
    motorTemperature: column("Motor temp [°C]", "degC"),
    packTemperature: column("Pack temp [°C]", "degC"),
    ambientTemperature: column("Outside temp [°C]", "degC"),
    throttle: column("Throttle [%]", "%"),
    altitude: column("Altitude [m]", "m"),
    airspeed: column("Airspeed [m/s]", "m/s"),
    groundSpeed: column("Ground speed [m/s]", "m/s"),
    chargeCounter: column("Capacity used [mAh]", "mAh"),
  },
  extras: {
    receiverVolts: "Receiver volts [V]",
    signalStrength: "Signal strength [%]",
    event: "Event",
  },
};

const isoTimesInUtf16: LogStyle = {
  ...BASE,
  name: "ISO times in UTF-16",
  encoding: "utf-16le",
  newline: "\r\n",
  delimiter: ";",
  clock: "isoDateTime",
  clockHeaders: ["Timestamp"],
  columns: {
    packVoltage: column("Voltage (V)", "V"),
    current: column("Current (A)", "A"),
    shaftSpeed: column("Speed (rev/min)", "rev/min"),
    controllerTemperature: column("Controller (°C)", "degC"),
    motorTemperature: column("Motor (°C)", "degC"),
    packTemperature: column("Pack (°C)", "degC"),
    ambientTemperature: column("Ambient (°C)", "degC"),
    throttle: column("Throttle (%)", "%"),
    altitude: column("Height (m)", "m"),
    airspeed: column("Airspeed (m/s)", "m/s"),
    groundSpeed: column("Ground speed (m/s)", "m/s"),
    chargeCounter: column("Charge (mAh)", "mAh"),
  },
};

const wholeSecondClock: LogStyle = {
  ...BASE,
  name: "whole-second clock with quoted headers",
  newline: "\r\n",
  quotesHeader: true,
  clock: "wholeSecondClock",
  clockHeaders: ["Clock"],
  columns: {
    packVoltage: column("Volts, pack", "V"),
    current: column("Amps, pack", "A"),
    shaftSpeed: column("RPM", "rev/min"),
    controllerTemperature: column("Controller temp, C", "degC"),
    motorTemperature: column("Motor temp, C", "degC"),
    packTemperature: column("Pack temp, C", "degC"),
    ambientTemperature: column("Air temp, C", "degC"),
    throttle: column("Throttle, %", "%"),
    altitude: column("Altitude, m", "m"),
    airspeed: column("Airspeed, m/s", "m/s"),
    groundSpeed: column("Ground speed, m/s", "m/s"),
    chargeCounter: column("Used, mAh", "mAh"),
  },
};

const cellColumns: LogStyle = {
  ...BASE,
  name: "cell columns and a counter",
  clock: "seconds",
  clockHeaders: ["Elapsed (s)"],
  columns: {
    cellVoltage: column("Cell", "V"),
    current: column("Current (A)", "A"),
    shaftSpeed: column("Shaft (rpm)", "rev/min"),
    controllerTemperature: column("Controller temp (F)", "degF"),
    motorTemperature: column("Motor temp (F)", "degF"),
    packTemperature: column("Pack temp (F)", "degF"),
    ambientTemperature: column("Air temp (F)", "degF"),
    throttle: column("Throttle (%)", "%"),
    altitude: column("Altitude (m)", "m"),
    airspeed: column("Airspeed (m/s)", "m/s"),
    groundSpeed: column("Ground speed (m/s)", "m/s"),
    chargeCounter: column("Used (mAh)", "mAh"),
  },
};

const epochInMilliUnits: LogStyle = {
  ...BASE,
  name: "epoch in milli-units",
  clock: "epochMilliseconds",
  clockHeaders: ["unix_ms"],
  columns: {
    packVoltage: column("battery_mV", "mV"),
    current: column("battery_mA", "mA"),
    shaftSpeed: column("rpm", "rev/min"),
    controllerTemperature: column("esc_temp_C", "degC"),
    motorTemperature: column("motor_temp_C", "degC"),
    packTemperature: column("battery_temp_C", "degC"),
    ambientTemperature: column("air_temp_C", "degC"),
    throttle: column("throttle_pct", "%"),
    altitude: column("altitude_m", "m"),
    airspeed: column("airspeed_mps", "m/s"),
    groundSpeed: column("groundspeed_mps", "m/s"),
    chargeCounter: column("used_mAh", "mAh"),
  },
  extras: { receiverVolts: "receiver_mV" },
};

const dottedDates: LogStyle = {
  ...BASE,
  name: "dotted dates with decimal comma",
  encoding: "windows-1252",
  newline: "\r\n",
  delimiter: ";",
  decimalMark: ",",
  preamble: ["Model;floatplane", "Remark;all sensors of our own make"],
  clock: "dottedDateTime",
  clockHeaders: ["Date and time"],
  columns: {
    packVoltage: column("Pack voltage / V", "V"),
    current: column("Pack current / A", "A"),
    shaftSpeed: column("Speed / min-1", "rev/min"),
    controllerTemperature: column("Controller temp / °C", "degC"),
    motorTemperature: column("Motor temp / °C", "degC"),
    packTemperature: column("Pack temp / °C", "degC"),
    ambientTemperature: column("Air temp / °C", "degC"),
    throttle: column("Throttle / %", "%"),
    altitude: column("Altitude / m", "m"),
    airspeed: column("Airspeed / m/s", "m/s"),
    groundSpeed: column("Ground speed / m/s", "m/s"),
    chargeCounter: column("Used / mAh", "mAh"),
  },
};

/** Every style by a short key. */
export const LOG_STYLES = {
  plainWords,
  symbolsWithDecimalComma,
  tabsWithUnitsRow,
  pipesInFahrenheit,
  paddedSpacesInKelvin,
  dateAndClockWithExtras,
  isoTimesInUtf16,
  wholeSecondClock,
  cellColumns,
  epochInMilliUnits,
  dottedDates,
} as const satisfies Record<string, LogStyle>;

export type LogStyleKey = keyof typeof LOG_STYLES;
