import { clockCells } from "./clockText.ts";
import type { ExtraColumn, LogStyle, StartClock, StyleColumn, WrittenUnit } from "./logStyle.ts";
import { type Random, seededRandom } from "./random.ts";
import type { LoggedChannel, LoggedFlight } from "./sensors.ts";

const USUAL_START: StartClock = { date: "2026-05-16", clock: "10:20:30", offsetMinutes: 120 };

const WRITTEN: Readonly<Record<WrittenUnit, { readonly factor: number; readonly shift: number }>> = {
  V: { factor: 1, shift: 0 },
  mV: { factor: 1000, shift: 0 },
  A: { factor: 1, shift: 0 },
  mA: { factor: 1000, shift: 0 },
  "rev/min": { factor: 1, shift: 0 },
  degC: { factor: 1, shift: 0 },
  degF: { factor: 1.8, shift: 32 },
  K: { factor: 1, shift: 273.15 },
  "%": { factor: 1, shift: 0 },
  share: { factor: 0.01, shift: 0 },
  m: { factor: 1, shift: 0 },
  ft: { factor: 1 / 0.3048, shift: 0 },
  "m/s": { factor: 1, shift: 0 },
  "km/h": { factor: 3.6, shift: 0 },
  mAh: { factor: 1, shift: 0 },
};

/** Decimals that keep a value of this step whole in its written unit; full precision is cut to a millionth. */
function decimals(unit: WrittenUnit, step: number): number {
  if (unit === "K") return 2;
  const written = step > 0 ? step * WRITTEN[unit].factor : 1e-6;
  for (let places = 0; places < 6; places += 1) {
    const scaled = written * 10 ** places;
    if (Math.abs(scaled - Math.round(scaled)) < 1e-6) return places;
    if ((unit === "ft" || unit === "km/h") && places === 1) return 1;
  }
  return 6;
}

/** One column of the file: its header cells and the text of a row. */
interface Column {
  readonly headers: readonly string[];
  readonly units: readonly string[];
  readonly cells: (row: number) => readonly string[];
}

function channelColumn(
  flight: LoggedFlight,
  channel: LoggedChannel,
  { header, unit, unitText }: StyleColumn,
  style: LogStyle,
): Column | null {
  const values = flight.channels.get(channel);
  if (values === undefined) return null;
  const { factor, shift } = WRITTEN[unit];
  const places = decimals(unit, flight.steps.get(channel) ?? 0);
  const text = (value: number) => {
    if (!Number.isFinite(value)) return style.missing;
    return (value * factor + shift)
      .toFixed(places)
      .replace(/^-(0(\.0*)?)$/, "$1")
      .replace(".", style.decimalMark);
  };
  return { headers: [header], units: [unitText ?? unit], cells: (row) => [text(values[row]!)] };
}

function cellColumns(flight: LoggedFlight, column: StyleColumn, style: LogStyle): Column[] {
  const columns: Column[] = [];
  for (let cell = 1; flight.channels.has(`cellVoltage${cell}`); cell += 1) {
    const named = { ...column, header: `${column.header} ${cell} (V)` };
    columns.push(...present(channelColumn(flight, `cellVoltage${cell}`, named, style)));
  }
  return columns;
}

function channelColumns(flight: LoggedFlight, style: LogStyle): Column[] {
  const entries = Object.entries(style.columns) as [LoggedChannel | "cellVoltage", StyleColumn][];
  return entries.flatMap(([key, column]) =>
    key === "cellVoltage"
      ? cellColumns(flight, column, style)
      : present(channelColumn(flight, key, column, style)),
  );
}

function present(column: Column | null): Column[] {
  return column === null ? [] : [column];
}

const EVENTS = ["mode 2", "lap", "switch up", "switch down"];

function extraCell(extra: ExtraColumn, header: string, style: LogStyle, random: Random): string {
  if (extra === "event") return random.chance(0.01) ? random.pick(EVENTS) : "";
  if (extra === "signalStrength") return String(Math.round(random.between(70, 100)));
  const volts = 5.1 + 0.03 * random.normal();
  if (header.endsWith("mV")) return (1000 * volts).toFixed(0);
  return volts.toFixed(2).replace(".", style.decimalMark);
}

function extraColumns(style: LogStyle): Column[] {
  return (Object.entries(style.extras) as [ExtraColumn, string][]).map(([extra, header]) => {
    const random = seededRandom(1).fork(extra);
    return { headers: [header], units: [""], cells: () => [extraCell(extra, header, style, random)] };
  });
}

function clockColumn(flight: LoggedFlight, style: LogStyle, start: StartClock): Column {
  return {
    headers: style.clockHeaders,
    units: style.clockHeaders.map(() => style.clockUnitText ?? ""),
    cells: (row) => clockCells(style.clock, flight.timeS[row]!, start, style.decimalMark),
  };
}

function lineOf(cells: readonly string[], style: LogStyle): string {
  if (style.delimiter !== " ") return cells.join(style.delimiter);
  return cells.map((cell) => cell.padStart(10)).join("  ");
}

function encode(text: string, encoding: LogStyle["encoding"]): Uint8Array {
  if (encoding === "utf-8") return new TextEncoder().encode(text);
  if (encoding === "utf-8-bom") return new TextEncoder().encode(`\ufeff${text}`);
  if (encoding === "windows-1252") return Uint8Array.from(text, (letter) => letter.charCodeAt(0) & 0xff);
  const bytes = new Uint8Array(2 * (text.length + 1));
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, true);
  for (let place = 0; place < text.length; place += 1) {
    view.setUint16(2 * (place + 1), text.charCodeAt(place), true);
  }
  return bytes;
}

/** The bytes of a log file in one style. Channels that the style has no column for are left out. */
export function writeLog(flight: LoggedFlight, style: LogStyle, start: StartClock = USUAL_START): Uint8Array {
  const columns = [
    clockColumn(flight, style, start),
    ...channelColumns(flight, style),
    ...extraColumns(style),
  ];
  const quoted = (header: string) => (style.quotesHeader ? `"${header.replaceAll('"', '""')}"` : header);
  const lines = [...style.preamble];
  lines.push(
    lineOf(
      columns.flatMap(({ headers }) => headers.map(quoted)),
      style,
    ),
  );
  if (style.hasUnitsRow)
    lines.push(
      lineOf(
        columns.flatMap(({ units }) => units),
        style,
      ),
    );
  for (let row = 0; row < flight.rows; row += 1) {
    lines.push(
      lineOf(
        columns.flatMap(({ cells }) => cells(row)),
        style,
      ),
    );
  }
  return encode(lines.join(style.newline) + style.newline, style.encoding);
}
