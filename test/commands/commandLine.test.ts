import { describe, expect, it } from "vitest";
import { command as check } from "../../src/apps/commands/check.ts";
import { EXIT } from "../../src/apps/commands/exitCodes.ts";
import { commandHelp, programHelp } from "../../src/apps/commands/help.ts";
import { COMMANDS } from "../../src/apps/commands/registry.ts";
import { usageSentences } from "../../src/apps/commands/sentences.ts";
import { CHANNEL_NAMES } from "../../src/base/channels/index.ts";
import { rightShare } from "../support/typos.ts";
import { BookMachine, flightLog } from "./bookMachine.ts";
import { runInMemory } from "./inMemory.ts";
import { SAMPLE_AIRCRAFT, sampleLog } from "./sampleLog.ts";

const files = { "flight.csv": sampleLog() };
const names = Object.keys(COMMANDS);

/** The word after "Did you mean", or null. */
function suggestion(err: string): string | null {
  return /Did you mean (\S+)\?/.exec(err)?.[1] ?? null;
}

async function suggestions(words: readonly string[], line: (typo: string) => readonly string[]) {
  const found = new Map<string, string | null>();
  rightShare(words, (typo) => {
    found.set(typo, null);
    return null;
  });
  for (const typo of found.keys())
    found.set(typo, suggestion((await runInMemory(line(typo), { files })).err));
  return rightShare(words, (typo) => found.get(typo) ?? null);
}

describe("the command line", () => {
  it.each([
    [["--version"], EXIT.done, /^\d+\.\d+\.\d+\n$/, /^$/],
    [["--help"], EXIT.done, /^tallywatt: .*\n\nExamples:/, /^$/],
    [["-h"], EXIT.done, /Examples:/, /^$/],
    [["help"], EXIT.done, /Examples:/, /^$/],
    [["help", "columns"], EXIT.done, /^tallywatt columns: .*\n\nExamples:/, /^$/],
    [["check", "--help"], EXIT.done, /^tallywatt check: .*\n\nExamples:/, /^$/],
    [["check", "flight.csv", "-h"], EXIT.done, /^tallywatt check: /, /^$/],
    [[], EXIT.usage, /^$/, /Examples:/],
    [["chek", "flight.csv"], EXIT.usage, /^$/, /Did you mean check\?/],
    [["frobnicate"], EXIT.usage, /^$/, /The commands are check, columns/],
    [["help", "chek"], EXIT.usage, /^$/, /Did you mean check\?/],
    [["toString"], EXIT.usage, /^$/, /no command/],
    [["--verison"], EXIT.usage, /^$/, /Did you mean --version\?/],
    [["check"], EXIT.usage, /^$/, /LOG is missing/],
    [["check", "flight.csv", "--reprot"], EXIT.usage, /^$/, /Did you mean --report\?/],
    [["check", "flight.csv", "--josn"], EXIT.usage, /^$/, /Did you mean --json\?/],
    [["check", "flight.csv", "--aircraft"], EXIT.usage, /^$/, /--aircraft needs a value/],
    [["check", "flight.csv", "--aircraft", "--json"], EXIT.usage, /^$/, /the option --json follows/],
    [["check", "flight.csv", "--ambient", "warm"], EXIT.usage, /^$/, /--ambient is "warm".*-40 to 60/],
    [["check", "flight.csv", "--ambient", "1e1"], EXIT.usage, /^$/, /--ambient is "1e1"/],
    [["check", "flight.csv", "--start-pct", "0"], EXIT.usage, /^$/, /1 to 100 percent/],
    [["check", "flight.csv", "--cells", "8.5"], EXIT.usage, /^$/, /a whole number from 1 to 16/],
    [["check", "flight.csv", "--pole-pairs", "0"], EXIT.usage, /^$/, /a whole number from 1 to 60/],
    [["check", "flight.csv", "--rate", "0"], EXIT.usage, /^$/, /--rate is "0"/],
    [["check", "flight.csv", "--decimal", "coma"], EXIT.usage, /^$/, /Did you mean comma\?/],
    [["check", "flight.csv", "--date-order", "dym"], EXIT.usage, /^$/, /dmy, mdy, ymd/],
    [["check", "flight.csv", "--delimiter", "::"], EXIT.usage, /^$/, /one character/],
    [["check", "flight.csv", "--column", "current"], EXIT.usage, /^$/, /form CHANNEL=HEADER/],
    [["check", "flight.csv", "--column", "curent=#2"], EXIT.usage, /^$/, /Did you mean current\?/],
    [["check", "flight.csv", "--column", "constructor=#2"], EXIT.usage, /^$/, /not a channel/],
    [["check", "flight.csv", "--column", "current=#2", "--column", "current=#3"], EXIT.usage, /^$/, /twice/],
    [["check", "flight.csv", "--unit", "current="], EXIT.usage, /^$/, /form CHANNEL=UNIT/],
    [["check", "flight.csv", "flight.csv"], EXIT.usage, /^$/, /named twice/],
    [["check", "-", "-"], EXIT.usage, /^$/, /only once/],
    [["check", "-", "--report"], EXIT.usage, /^$/, /--report=FILE\.html/],
    [["check", "flight.csv", "--report=out.txt"], EXIT.usage, /^$/, /must end in \.html/],
    [["check", "flight.csv", "--report", "out.html"], EXIT.usage, /^$/, /--report=out\.html/],
    [["check", "a.csv", "b.csv", "--report=out.html"], EXIT.usage, /^$/, /--report=FOLDER/],
    [["check", "a/x.csv", "b/x.csv", "--report=out"], EXIT.usage, /^$/, /same report/],
    [["columns", "flight.csv", "other.csv"], EXIT.usage, /^$/, /Help: tallywatt columns --help/],
    [["new"], EXIT.usage, /^$/, /FILE is missing/],
    [["new", "-"], EXIT.usage, /^$/, /not a name/],
    [["check", "nothing.csv"], EXIT.unusable, /^$/, /There is no file nothing\.csv/],
    [["columns", "nothing.csv"], EXIT.unusable, /^$/, /There is no file nothing\.csv/],
    [
      ["check", "flight.csv", "--aircraft", "nothing.json"],
      EXIT.unusable,
      /^$/,
      /tallywatt new nothing\.json/,
    ],
  ])("%j ends with %i", async (words, exit, out, err) => {
    const ran = await runInMemory(words, { files });
    expect(ran.err).toMatch(err);
    expect(ran.out).toMatch(out);
    expect(ran.exit).toBe(exit);
    expect(ran.err).not.toMatch(/undefined|NaN|\[object|Error:|\n\s+at /);
  });

  it("prints help of at most 60 lines that leads with two examples or more", async () => {
    for (const name of names) {
      const { out } = await runInMemory([name, "--help"]);
      const lines = out.trimEnd().split("\n");
      expect(lines.length, name).toBeLessThanOrEqual(60);
      expect(lines[2]).toBe("Examples:");
      expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(110);
    }
    expect((await runInMemory(["--help"])).out.split("\n").length).toBeLessThanOrEqual(60);
  });

  it("runs every example of its help", async () => {
    const tern = { "tern.json": SAMPLE_AIRCRAFT.replace("Heron", "Tern") };
    const day = { "day.csv": flightLog({ startsAt: "2026-06-14 10:00:00" }) };
    const machine = new BookMachine({ ...day, ...tern });
    await machine.ok("add day.csv --aircraft tern.json");
    const book = machine.bookFiles();
    const logs = { ...files, "one.csv": sampleLog(), "two.csv": sampleLog() };
    const setting = {
      files: { ...logs, ...tern, ...book },
      input: sampleLog(),
      env: { TALLYWATT_BOOK: "book" },
    };
    const texts = [programHelp()];
    for (const [name, { load }] of Object.entries(COMMANDS))
      texts.push(commandHelp(name, (await load()).command));
    const lines = texts.flatMap((text) =>
      [...text.matchAll(/^ {2}tallywatt (.*)$/gm)].map((match) => match[1] ?? ""),
    );
    expect(lines.length).toBeGreaterThan(10);
    for (const line of new Set(lines)) {
      if (line === "demo") continue; // The longest; its test stands with those of writing.
      const { "tern.json": _, ...withoutTern } = setting.files;
      const given = line.startsWith("new") ? { files: withoutTern } : setting;
      const ran = await runInMemory(line.replace(/ <.*/, "").split(" "), given);
      // A served page runs until it is interrupted, which this machine does at once.
      const isServed = line.startsWith("page") && !line.includes("--save");
      expect(ran.exit, `${line}\n${ran.err}`).toBe(isServed ? EXIT.interrupted : EXIT.done);
    }
  });

  it("names in help every option it takes", async () => {
    const { out } = await runInMemory(["check", "--help"]);
    for (const { flags } of check.options) expect(out).toContain(flags.split(" ")[0]);
  });

  it("guesses commands, options and channels right for 90 % of single slips", async () => {
    const options = check.options.map(({ flags }) => flags.split(" ")[0] ?? "");
    const channels = CHANNEL_NAMES.filter((name) => !/^cellVoltage([2-9]|1\d)$/.test(name));
    const tables = {
      commands: await suggestions(names, (typo) => [typo, "flight.csv"]),
      options: await suggestions(options, (typo) => ["check", "flight.csv", typo]),
      channels: await suggestions(channels, (typo) => ["check", "flight.csv", "--column", `${typo}=#2`]),
    };
    for (const [table, { share, wrong, count }] of Object.entries(tables)) {
      expect(count, table).toBeGreaterThan(40);
      expect(share, `${table}: ${wrong.join("; ")}`).toBeGreaterThanOrEqual(0.9);
    }
  });

  it("explains an unknown option only once, with the way to the help", async () => {
    const { err } = await runInMemory(["check", "flight.csv", "--reprot"]);
    expect(err).toBe(`${usageSentences.unknownOption("--reprot", "--report", "tallywatt check --help")}\n`);
  });

  it("shows a stack only with --debug", async () => {
    const words = ["check", "flight.csv", "--ambient", "warm"];
    expect((await runInMemory([...words, "--debug"])).err).toMatch(/\n\s+at /);
  });
});
