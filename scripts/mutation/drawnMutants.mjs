// A checker that lets only the drawn share of the mutants run: MUTATION_SHARE. The draw depends on nothing but the
// mutant itself, so a second run draws the same ones.
import { createHash } from "node:crypto";
import { relative } from "node:path";

/** Changed only to draw another sample. */
export const SEED = 1;

class DrawnMutants {
  async init() {}

  async check(mutants) {
    const share = Number(process.env.MUTATION_SHARE);
    return Object.fromEntries(mutants.map((each) => [each.id, drawnBelow(each, share) ? PASSED : LEFT]));
  }
}

const PASSED = { status: "passed" };
/** The one kind of result that counts for nothing in a score. */
const LEFT = { status: "compileError", reason: "not drawn" };

function drawnBelow({ fileName, location, mutatorName, replacement }, share) {
  const path = relative(process.cwd(), fileName).replace(/^\.tmp\/stryker\/[^/]+\//, "");
  const text = JSON.stringify([SEED, path, location.start, location.end, mutatorName, replacement]);
  return createHash("sha256").update(text).digest().readUInt32BE() / 2 ** 32 < share;
}

export const strykerPlugins = [{ kind: "Checker", name: "drawn", injectableClass: DrawnMutants }];
