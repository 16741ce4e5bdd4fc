import { describe, expect, it } from "vitest";
import { COMMANDS } from "../../src/apps/commands/registry.ts";
import { BookMachine, flightLog } from "../commands/bookMachine.ts";
import { ATTACK_STRINGS } from "../support/attackStrings.ts";

/** Erases the screen, sets the title, rings, turns the direction, hides and separates, ends lines falsely. */
const HOSTILE =
  "\u001b[2J\u001b]0;owned\u0007\u009b31m\u202egnp\u202c\u2066x\u2069\u200b\u2028\u2029\ufeff\u0008\u0000\u007f\r\u061c";
/** What may reach a terminal: no C0 but tab and newline, no C1, no direction or invisible marks, no half pairs. */
const FORBIDDEN =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these must not pass
  /[\u0000-\u0008\u000B-\u001F\u007F-\u009F\u061C\u200B-\u200F\u2028-\u202E\u2060-\u206F\uFEFF]|\p{Cs}/u;

const name = (text: string): string => text.replaceAll("\u0000", "");
/** The same inside a cell: without what ends or damages its line. */
const CELL = name(HOSTILE)
  .replace("\r", "")
  .replaceAll(/[\u2028\u2029]/g, "");
const LOG = `${name(HOSTILE)}.csv`;

const AIRCRAFT = JSON.stringify({
  name: `Heron${HOSTILE}`,
  pack: { cells: 8, capacityMah: 5000, minLoadedCellV: 3.3 },
  controller: { continuousA: 100, limitC: 100 },
  motor: { kv: 230, windingOhm: 0.021, noLoadA: 1.4, polePairs: 7 },
  propeller: { diameterIn: 18, pitchIn: 10, blades: 2, family: `thin${HOSTILE}` },
});

/** A log whose headers and some cells carry the marks, in the columns that are read and in others. */
function hostileLog(): string {
  const [header, ...rows] = flightLog({ startsAt: "2026-06-14 10:00:00" }).trimEnd().split("\n");
  const lines = rows.map((row, at) => {
    if (at === 50) return `${row.replace(/,[^,]*,/, `,${CELL}3,`)},`;
    return `${row},${at % 40 === 0 ? CELL : ""}`;
  });
  return [`${header},note${CELL}`, ...lines, ""].join("\n");
}

const files = {
  "heron.json": AIRCRAFT,
  [LOG]: hostileLog(),
  "clean.csv": flightLog({ currentA: 30, startsAt: "2026-06-15 10:00:00" }),
  "bad.json": `{ "name": "x", "pa${name(HOSTILE)}ck": 3 }`,
};
const GIVEN = ["--pack", "A\u202e\u2066", "--note", "seen\u202e\u200b\u2069"];

/** Words of each command line; together they meet every command. */
const CALLS: readonly (readonly string[])[] = [
  ["check", LOG],
  ["check", LOG, "--aircraft", "heron.json"],
  ["check", LOG, "--aircraft", "bad.json"],
  ["check", LOG, "--aircraft", name(HOSTILE)],
  ["check", LOG, "--column", `current=${HOSTILE}`],
  ["check", LOG, "--unit", `current=${HOSTILE}`],
  ["check", LOG, "--delimiter", HOSTILE],
  ["check", LOG, `--${HOSTILE}`],
  ["check", LOG, "--report"],
  ["check", `no${name(HOSTILE)}.csv`],
  ["columns", LOG],
  ["plan", "--aircraft", "heron.json"],
  ["swap", "--aircraft", "heron.json", "--log", LOG, "--propeller", `19x8${HOSTILE}`],
  ["swap", "--aircraft", "heron.json", "--log", LOG, "--propeller", "19x8"],
  ["add", LOG, "clean.csv", "--aircraft", "heron.json", ...GIVEN],
  ["add", LOG, "--aircraft", "heron.json", "--propeller", HOSTILE],
  ["add", LOG, "--date", HOSTILE],
  ["list"],
  ["show", "2026-06-14-1"],
  ["show", HOSTILE],
  ["edit", "2026-06-14-1", "--note", `again${HOSTILE}`, "--pack", HOSTILE],
  ["timer"],
  ["timer", "--pack", HOSTILE],
  ["trend"],
  ["season", "--report=season.html"],
  ["recheck"],
  ["export", "flights.csv"],
  ["export", `${HOSTILE}.xyz`],
  ["verify"],
  ["remove", "2026-06-15-1", "--yes"],
  ["undo"],
  ["new", `${name(HOSTILE)}.json`],
  ["page", "--save", `${name(HOSTILE)}.html`],
  ["demo", `${name(HOSTILE)}`],
  [HOSTILE],
];

const WITH_JSON: ReadonlySet<string> = new Set([
  "list",
  "show 2026-06-14-1",
  `check ${LOG}`,
  `columns ${LOG}`,
]);

describe("what a log, a file name, a note or an option brings along", () => {
  it("meets every command", () => {
    const met = new Set(CALLS.map(([command]) => command));
    expect(Object.keys(COMMANDS).filter((command) => !met.has(command))).toEqual([]);
  });

  it("reaches no terminal as a control or direction mark", async () => {
    const machine = new BookMachine(files);
    for (const words of CALLS.filter(([command]) => command !== "demo")) {
      for (const more of WITH_JSON.has(words.join(" ")) ? [[], ["--json"]] : [[]]) {
        const ran = await machine.run([...words, ...more]);
        const said = `${ran.out}${ran.err}`;
        expect(FORBIDDEN.exec(said)?.[0], `${words.join(" ")}\n${JSON.stringify(said.slice(0, 2000))}`).toBe(
          undefined,
        );
        expect(ran.exit, ran.err).not.toBe(1);
      }
      if (words.includes("clean.csv")) expect(await machine.flights()).toHaveLength(2);
    }
  });

  it("ends no line of a message", async () => {
    const machine = new BookMachine(files);
    for (const attack of ATTACK_STRINGS.map(name)) {
      const ran = await machine.run(["check", `${attack.replaceAll("/", "_")}\nsecond line.csv`]);
      expect(ran.err).not.toMatch(/^second line/m);
      expect(FORBIDDEN.test(ran.err)).toBe(false);
    }
  });
});
