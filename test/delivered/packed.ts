import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { join, resolve } from "node:path";

export const ROOT = resolve(import.meta.dirname, "../..");

export interface Ran {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs a program to its end, with nothing of this run's environment but what `env` holds. */
export function run(program: string, words: readonly string[], cwd: string, env: NodeJS.ProcessEnv): Ran {
  const { status, stdout, stderr } = spawnSync(program, words, { cwd, encoding: "utf8", env });
  return { status, out: stdout, err: stderr };
}

/** Packs what was built into a folder; the archive's path. */
export function packInto(folder: string, env: NodeJS.ProcessEnv): string {
  const packed = run("npm", ["pack", "--ignore-scripts", "--pack-destination", folder], ROOT, env);
  if (packed.status !== 0) throw new Error(packed.err);
  return join(folder, readdirSync(folder).find((name) => name.endsWith(".tgz"))!);
}

/** A program in TypeScript that uses the library by its public types and prints the charge of the log it is given. */
export const CONSUMER = `
import { checkLog, type FlightCheck, NO_BUDGET, NO_FACTS, NO_READING_OPTIONS, type Quantity } from "tallywatt";
import { readFileSync } from "node:fs";

const { check } = checkLog(new Uint8Array(readFileSync(process.argv[2] ?? "")), {
  file: "log.csv", sha256: "", aircraft: null, facts: NO_FACTS, budget: NO_BUDGET,
  readings: [], options: NO_READING_OPTIONS, day: { ambientC: null, startPct: null },
});
const typed: FlightCheck = check;
const used: Quantity | undefined = typed.flights[0]?.measures.chargeUsedMah;
// @ts-expect-error a quantity is no number
export const wrong: number = used;
console.log(JSON.stringify(used));
`;

/** Compiles a file of a folder strictly, against the types installed there; what the compiler said. */
export function compile(file: string, folder: string, env: NodeJS.ProcessEnv): string {
  const options = ["--strict", "--target", "es2023", "--module", "nodenext"];
  const types = ["--typeRoots", join(ROOT, "node_modules/@types"), "--types", "node"];
  const tsc = join(ROOT, "node_modules/.bin/tsc");
  const { out, err } = run(tsc, ["--ignoreConfig", ...options, ...types, file], folder, env);
  return out + err;
}
