// The long checks of the logbook's store on a real disk, with the whole command and with the suite's small program:
// kills, and 4 processes with 50 adds each.
// Run: node scripts/run-typescript.mjs scripts/soak-store.ts [kills of the command] [kills of the program] [adds]
// The other long check tries every file call, byte and cut: TALLYWATT_SOAK=1 npx vitest run test/folderBook
import { rmSync } from "node:fs";
import { dirname } from "node:path";
import {
  type Adder,
  buildProgram,
  commandAdder,
  killAdding,
  raceAdding,
  workerAdder,
} from "../test/folderBook/bookProcesses.ts";
import { seededRandom } from "../test/generator/random.ts";

const SEED = 20260614;
const PROCESSES = 4;
const [commandKills = 200, programKills = 2000, adds = 50] = process.argv.slice(2).map(Number);

async function soak(name: string, adder: Adder, kills: number, logsACall: number): Promise<void> {
  const killing = await killAdding(adder, kills, seededRandom(SEED));
  console.log(`${name}, seed ${SEED}, ${kills} calls: ${JSON.stringify(killing)}`);
  const { exits, flights, damage } = await raceAdding(adder, PROCESSES, adds, logsACall);
  const failed = exits.filter((exit) => exit !== 0).length;
  console.log(
    `${name}, ${PROCESSES} x ${adds} adds: ${flights} flights, ${failed} failed, damage ${JSON.stringify(damage)}`,
  );
  const isWrong = killing.lost.length + killing.damage.length + damage.length + failed > 0;
  if (isWrong || flights !== PROCESSES * adds) process.exitCode = 1;
}

const program = await buildProgram();
try {
  await soak("small program", await workerAdder(dirname(program)), programKills, adds);
  await soak("command", commandAdder(program), commandKills, 1);
} finally {
  rmSync(dirname(dirname(program)), { recursive: true, force: true });
}
