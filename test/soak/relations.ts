import type { Random } from "../generator/random.ts";
import { exactSums, type Sums } from "./exactSums.ts";
import { flightNumbers, type WholeRow } from "./flightNumbers.ts";
import { bytesOf, decimalText, plainTable, textOf } from "./logText.ts";
import { readSums } from "./readSums.ts";

/** The same flight in other clothes: one or more files whose sums add up to those of the plain log. */
type Clothes = (rows: readonly WholeRow[], random: Random) => readonly string[];

type Cells = readonly string[];

/** Every line of the plain table changed; line 0 is the header. */
function byLine(change: (cells: Cells, line: number, rows: readonly WholeRow[]) => Cells): Clothes {
  return (rows) => [textOf(plainTable(rows).map((cells, line) => change(cells, line, rows)))];
}

/** One column written otherwise. */
function inColumn(at: number, header: string, text: (row: WholeRow) => string): Clothes {
  return byLine((cells, line, rows) => cells.with(at, line === 0 ? header : text(rows[line - 1]!)));
}

function shuffled<Item>(items: readonly Item[], random: Random): readonly Item[] {
  return items
    .map((item) => ({ item, key: random.next() }))
    .sort((one, other) => one.key - other.key)
    .map(({ item }) => item);
}

const two = (value: number): string => String(value).padStart(2, "0");

function clockText(ms: number): string {
  const second = Math.floor(ms / 1000);
  const clock = [Math.floor(second / 3600), Math.floor(second / 60) % 60, second % 60].map(two).join(":");
  return `${clock}.${String(ms % 1000).padStart(3, "0")}`;
}

const NOON_MS = 43_200_000;

export const RELATIONS: Readonly<Record<string, Clothes>> = {
  "columns in another order": (rows, random) => {
    const order = shuffled([0, 1, 2, 3, 4], random);
    return [textOf(plainTable(rows).map((cells) => order.map((at) => cells[at]!)))];
  },
  "constant columns more": byLine((cells, line) =>
    line === 0 ? ["note", ...cells, "lat", "state"] : ["", ...cells, "47.5", "armed"],
  ),
  "volts in mV": inColumn(3, "pack_mv", (row) => String(row.millivolts)),
  "amps in mA": inColumn(4, "current_ma", (row) => String(row.milliamps)),
  "time in ms": inColumn(0, "time_ms", (row) => String(row.ms)),
  "time in us": inColumn(0, "time_us", (row) => String(row.ms * 1000)),
  "time of day": inColumn(0, "Time", (row) => clockText(NOON_MS + row.ms)),
  "time across midnight": inColumn(0, "Time", (row) => clockText((86_395_000 + row.ms) % 86_400_000)),
  "date and time": inColumn(0, "timestamp", (row) => `2026-05-01T${clockText(NOON_MS + row.ms)}+02:00`),
  "seconds since 1970": inColumn(0, "timestamp", (row) => decimalText(1_777_000_000_000 + row.ms, 3)),
  "another start of time": (rows, random) => {
    const shiftMs = 1000 * random.whole(1, 5000);
    return [textOf(plainTable(rows.map((row) => ({ ...row, ms: row.ms + shiftMs }))))];
  },
  "every row twice": (rows) => [
    textOf(plainTable(rows).flatMap((cells, line) => (line === 0 ? [cells] : [cells, cells]))),
  ],
  "lines ended otherwise": (rows, random) => [
    textOf(plainTable(rows), ",", random.pick(["\r\n", "\r", "\r\r\n"])),
  ],
  "blank lines between": (rows) => [textOf(plainTable(rows), ",", "\n\n")],
  "a units row": (rows) => {
    const [, ...lines] = plainTable(rows);
    return [
      textOf([["Time", "Speed", "ESC temp", "Voltage", "Current"], ["s", "rpm", "C", "V", "A"], ...lines]),
    ];
  },
  "every cell quoted": byLine((cells) => cells.map((cell) => `"${cell}"`)),
  "in two parts that share a row": (rows, random) => {
    const at = random.whole(20, rows.length - 20);
    const [header, ...lines] = plainTable(rows);
    return [lines.slice(0, at + 1), lines.slice(at)].map((part) => textOf([header!, ...part]));
  },
};

export const RELATION_NAMES = Object.keys(RELATIONS);

/** Null when the sums are those of the plain log to a billionth. */
export function relationTrial(name: string, random: Random): string | null {
  const rows = flightNumbers(random.fork("log"), 100);
  const total: { -readonly [Name in keyof Sums]: number } = { chargeMah: 0, energyWh: 0 };
  for (const text of RELATIONS[name]!(rows, random)) {
    const { outcome, sums } = readSums(bytesOf(text));
    if (sums === null) return `${name}: ${outcome.state}`;
    total.chargeMah += sums.chargeMah;
    total.energyWh += sums.energyWh;
  }
  const expected = exactSums(rows);
  const isEqual =
    Math.abs(total.chargeMah / expected.chargeMah - 1) <= 1e-9 &&
    Math.abs(total.energyWh / expected.energyWh - 1) <= 1e-9;
  return isEqual ? null : `${name}: ${total.chargeMah} mAh, not ${expected.chargeMah}`;
}
