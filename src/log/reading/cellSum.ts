import { type ChannelName, isCellChannel } from "../../base/channels/index.ts";

/** Below this a lead shows no cell, volts. */
const NO_CELL_V = 0.5;
/** Above this a reading spans more than one cell: the lead between them is open, and the sum is whole. */
const ONE_CELL_V = 5;

/** A cell whose lead showed no volts while the others did: its volts in the sum are estimated there. */
export interface LostCell {
  readonly cell: number;
  readonly rows: number;
  /** First such row, 0-based. */
  readonly firstRow: number;
  /** Its volts as a share of the other cells' mean while all showed; 1 when it never did. */
  readonly share: number;
}

export interface CellSum {
  readonly values: Float64Array;
  readonly cellCount: number;
  readonly lost: readonly LostCell[];
}

/**
 * Pack voltage as the sum of the logged cells; null when they are not all of the pack. A row in which one cell
 * is blank has no sum. A cell that falls to zero while the others show volts is a lost lead: it is estimated
 * from its earlier share of the others. `deadCells`: numbers of the cell columns that hold only zeros.
 */
export function cellSum(
  channels: ReadonlyMap<ChannelName, Float64Array>,
  cells: number | null,
  deadCells: readonly number[],
): CellSum | null {
  const logged = [...channels].flatMap(([channel, volts]) =>
    isCellChannel(channel) ? [{ cell: Number(channel.slice("cellVoltage".length)), volts }] : [],
  );
  if (logged.length < 2) return null;
  const dead = cells === logged.length ? [] : deadCells;
  const cellCount = logged.length + dead.length;
  const numbers = [...logged.map(({ cell }) => cell), ...deadCells];
  const isComplete = numbers.every((cell) => cell <= numbers.length);
  if (!isComplete || (cells !== null && cells !== cellCount) || dead.length > 1) return null;
  const rows = logged[0]!.volts.length;
  const all = [...logged, ...dead.map((cell) => ({ cell, volts: new Float64Array(rows) }))];
  return { ...summed(all, rows), cellCount };
}

type LoggedCell = { readonly cell: number; readonly volts: Float64Array };

function summed(all: readonly LoggedCell[], rows: number): Omit<CellSum, "cellCount"> {
  const values = new Float64Array(rows);
  /** Index of the one cell that is lost in a row; -1 none, -2 several. */
  const lostAt = new Int8Array(rows);
  for (let row = 0; row < rows; row++) {
    for (const { volts } of all) values[row]! += volts[row]!;
    lostAt[row] = lostIndex(all, row);
  }
  const lost = all.flatMap((_, at) => lostCell(all, at, values, lostAt));
  const shares = all.map(({ cell }) => lost.find((each) => each.cell === cell)?.share ?? 1);
  for (let row = 0; row < rows; row++) {
    const at = lostAt[row]!;
    if (at === -2) values[row] = Number.NaN;
    if (at < 0) continue;
    const others = values[row]! - all[at]!.volts[row]!;
    values[row] = others + (shares[at]! * others) / (all.length - 1);
  }
  return { values, lost };
}

function lostIndex(all: readonly LoggedCell[], row: number): number {
  let index = -1;
  let count = 0;
  for (let at = 0; at < all.length; at++) {
    const volts = all[at]!.volts[row]!;
    if (volts > ONE_CELL_V) return -1;
    if (Math.abs(volts) >= NO_CELL_V) continue;
    index = at;
    count++;
  }
  if (count === 0 || count === all.length) return -1;
  return count === 1 ? index : -2;
}

/** The loss of one cell, in a list; empty when its lead never failed. */
function lostCell(
  all: readonly LoggedCell[],
  at: number,
  sums: Float64Array,
  lostAt: Int8Array,
): readonly LostCell[] {
  const { cell, volts } = all[at]!;
  let rows = 0;
  let own = 0;
  let others = 0;
  for (let row = 0; row < sums.length; row++) {
    if (lostAt[row] === at) rows++;
    else if (lostAt[row] === -1 && sums[row]! > 0) {
      own += volts[row]!;
      others += sums[row]! - volts[row]!;
    }
  }
  const share = others > 0 ? (own * (all.length - 1)) / others : 1;
  return rows === 0 ? [] : [{ cell, rows, firstRow: lostAt.indexOf(at), share }];
}
