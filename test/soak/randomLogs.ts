import type { Random } from "../generator/random.ts";
import { DELIMITERS, MARKS, NEWLINES } from "./dialects.ts";
import { encoded, WRITTEN_ENCODINGS } from "./encodings.ts";
import { exactSums, type PartialRow } from "./exactSums.ts";
import { flightNumbers, type WholeRow } from "./flightNumbers.ts";
import { decimalText, type Mark, textOf } from "./logText.ts";
import { readSums } from "./readSums.ts";

interface Column {
  readonly header: string;
  readonly text: (row: PartialRow, mark: Mark) => string;
}

const scaled =
  (value: (row: PartialRow) => number | null, places: number) => (row: PartialRow, mark: Mark) => {
    const whole = value(row);
    return whole === null ? "" : decimalText(whole, places, mark);
  };
const hundredths = (millivolts: number | null) => (millivolts === null ? null : millivolts / 10);
const tenths = (milliamps: number | null) => (milliamps === null ? null : milliamps / 100);

/** Headers that a log may write; each says its unit. */
const WAYS: readonly (readonly Column[])[] = [
  [
    { header: "Time (s)", text: scaled((row) => row.ms, 3) },
    { header: "t [ms]", text: scaled((row) => row.ms, 0) },
    { header: "elapsed_us", text: scaled((row) => row.ms * 1000, 0) },
    { header: "Zeit [s]", text: scaled((row) => row.ms / 10, 2) },
  ],
  [
    { header: "Voltage (V)", text: scaled((row) => hundredths(row.millivolts), 2) },
    { header: "pack_mv", text: scaled((row) => row.millivolts, 0) },
    { header: "U [V]", text: scaled((row) => row.millivolts, 3) },
    { header: "Batt volts", text: scaled((row) => hundredths(row.millivolts), 2) },
  ],
  [
    { header: "Current (A)", text: scaled((row) => tenths(row.milliamps), 1) },
    { header: "current_ma", text: scaled((row) => row.milliamps, 0) },
    { header: "I [A]", text: scaled((row) => row.milliamps, 3) },
    { header: "Batt amps", text: scaled((row) => tenths(row.milliamps), 1) },
  ],
  [
    { header: "rpm", text: scaled((row) => row.rpm, 0) },
    { header: "Motor speed (rev/min)", text: scaled((row) => row.rpm * 10, 1) },
  ],
  [
    { header: "ESC temp (C)", text: scaled((row) => row.tenthsC, 1) },
    { header: "controller_temp_c", text: scaled((row) => Math.round(row.tenthsC / 10), 0) },
  ],
];
const MORE: readonly Column[] = [
  { header: "Rx dB", text: scaled((row) => row.rpm % 60, 0) },
  { header: "remark", text: () => "" },
  { header: "__proto__", text: () => "x" },
  { header: "lat", text: (_, mark) => `47${mark}25` },
];

/** Rows as a logger with dropouts keeps them: single cells blank, some rows missing, one longer hole. */
function withDropouts(rows: readonly WholeRow[], random: Random): readonly PartialRow[] {
  const blankShare = random.pick([0, 0, 0.02, 0.1]);
  const lostShare = random.pick([0, 0, 0.03]);
  const holeAt = random.chance(0.3) ? random.whole(20, rows.length - 30) : rows.length;
  return rows.flatMap((row, at) => {
    if (at > 2 && random.chance(lostShare)) return [];
    if (at >= holeAt && at < holeAt + 8) return [];
    return [
      {
        ...row,
        milliamps: random.chance(blankShare) ? null : row.milliamps,
        millivolts: random.chance(blankShare) ? null : row.millivolts,
      },
    ];
  });
}

/** Null when a log of any style and any dropouts gives the sums that whole-number arithmetic gives, to a billionth. */
export function randomLogTrial(random: Random): string | null {
  const rows = withDropouts(flightNumbers(random.fork("log"), 100), random);
  const columns = [...WAYS.map((ways) => random.pick(ways)), ...MORE.filter(() => random.chance(0.3))]
    .map((column) => ({ column, key: random.next() }))
    .sort((one, other) => one.key - other.key)
    .map(({ column }) => column);
  const mark = random.pick(MARKS);
  // Blank cells vanish between runs of blanks, and a decimal comma between commas is a question.
  const delimiter = random.pick(
    DELIMITERS.filter((each) => each !== "  " && !(each === "," && mark === ",")),
  );
  const table = [
    columns.map(({ header }) => header),
    ...rows.map((row) => columns.map(({ text }) => text(row, mark))),
  ];
  const bytes = encoded(textOf(table, delimiter, random.pick(NEWLINES)), random.pick(WRITTEN_ENCODINGS));
  const { outcome, sums } = readSums(bytes);
  const style = columns.map(({ header }) => header).join(delimiter);
  if (sums === null) return `${style}: ${outcome.state}`;
  const expected = exactSums(rows);
  const isEqual =
    Math.abs(sums.chargeMah / expected.chargeMah - 1) <= 1e-9 &&
    Math.abs(sums.energyWh / expected.energyWh - 1) <= 1e-9;
  return isEqual
    ? null
    : `${style}: ${sums.chargeMah} mAh ${sums.energyWh} Wh, not ${expected.chargeMah} and ${expected.energyWh}`;
}
