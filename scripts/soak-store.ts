// The long checks of the logbook's store: 200 kills and 4 processes with 50 adds each on a real disk.
// Run: node scripts/run-typescript.mjs scripts/soak-store.ts [kills] [adds]
// The other long check tries every file call, byte and cut: TALLYWATT_SOAK=1 npx vitest run test/folderBook
import { rmSync } from "node:fs";
import { dirname } from "node:path";
import { buildProgram, killAdding, raceAdding } from "../test/folderBook/bookProcesses.ts";
import { seededRandom } from "../test/generator/random.ts";

const SEED = 20260614;
const PROCESSES = 4;
const [kills = 200, adds = 50] = process.argv.slice(2).map(Number);

const program = await buildProgram();
try {
  const killing = await killAdding(program, kills, seededRandom(SEED));
  console.log(`seed ${SEED}, ${kills} calls: ${JSON.stringify(killing)}`);
  const { exits, flights, damage } = await raceAdding(program, PROCESSES, adds);
  const failed = exits.filter((exit) => exit !== 0).length;
  console.log(
    `${PROCESSES} x ${adds} adds: ${flights} flights, ${failed} failed, damage ${JSON.stringify(damage)}`,
  );
  const isWrong = killing.lost.length + killing.damage.length + damage.length + failed > 0;
  if (isWrong || flights !== PROCESSES * adds) process.exitCode = 1;
} finally {
  rmSync(dirname(dirname(program)), { recursive: true, force: true });
}
