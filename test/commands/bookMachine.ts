import { type Ran, runInMemory, type Setting } from "./inMemory.ts";
import { SAMPLE_AIRCRAFT } from "./sampleLog.ts";

const ROWS = 240;
const STEP_S = 0.5;

export interface FlightPlan {
  /** Mean flight current, A: two flights with other currents are two flights. */
  readonly currentA?: number;
  /** Clock of the first row, "2026-06-14 10:00:00"; without it the log counts seconds. */
  readonly startsAt?: string;
  /** Decimals of the currents: another export of the same flight writes others. */
  readonly decimals?: number;
}

/** A short log of one flight: rest, take-off, one and a half minutes of power, rest. Eight cells, two rows a second. */
export function flightLog({ currentA = 24, startsAt, decimals = 2 }: FlightPlan = {}): string {
  const startMs = startsAt === undefined ? null : Date.parse(`${startsAt.replace(" ", "T")}Z`);
  const rows = Array.from({ length: ROWS }, (_, row) => {
    const current = currentAt(row, currentA);
    const volts = 33.4 - current * 0.04 - row * 0.004;
    const speed = current < 1 ? 0 : 900 * Math.sqrt(current);
    const warmth = 20 + Math.min(row, 210) * 0.06;
    const values = [volts, current, speed, warmth].map((value) => value.toFixed(decimals));
    return [clockAt(startMs, row), ...values].join(",");
  });
  return ["time,pack_v,current_a,rpm,esc_temp_c", ...rows, ""].join("\n");
}

function currentAt(row: number, currentA: number): number {
  if (row < 20 || row > 210) return 0.3;
  if (row < 40) return 2 * currentA;
  return currentA + (row % 7) * 0.4;
}

function clockAt(startMs: number | null, row: number): string {
  if (startMs === null) return (row * STEP_S).toFixed(1);
  return new Date(startMs + 1000 * row * STEP_S).toISOString().replace("Z", "");
}

/** A machine in memory that keeps its files from one command to the next; the logbook is in the folder "book". */
export class BookMachine {
  files: Record<string, string | Uint8Array>;

  constructor(files: Readonly<Record<string, string | Uint8Array>> = {}) {
    this.files = { "heron.json": SAMPLE_AIRCRAFT, ...files };
  }

  async run(words: string | readonly string[], setting: Omit<Setting, "files"> = {}): Promise<Ran> {
    const list = typeof words === "string" ? words.split(" ") : words;
    const ran = await runInMemory(list, {
      env: { TALLYWATT_BOOK: "book" },
      ...setting,
      files: this.files,
    });
    this.files = { ...ran.files };
    return ran;
  }

  /** Runs a command that must succeed and gives what it said. */
  async ok(words: string | readonly string[]): Promise<string> {
    const ran = await this.run(words);
    if (ran.exit !== 0) throw new Error(`${String(words)} ended with ${ran.exit}: ${ran.err}`);
    return ran.out;
  }

  async json<Value>(words: string): Promise<Value> {
    return JSON.parse(await this.ok(`${words} --json`)) as Value;
  }

  async flights(): Promise<readonly string[]> {
    const { flights } = await this.json<{ flights: readonly { flight: string }[] }>("list");
    return flights.map(({ flight }) => flight);
  }

  /** Files of the book, without the index that can be made again. */
  bookFiles(): Readonly<Record<string, string | Uint8Array>> {
    const own = Object.entries(this.files).filter(
      ([path]) => path.startsWith("book/") && path !== "book/index.txt",
    );
    return Object.fromEntries(own);
  }
}
