import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { DEFAULTS } from "../../src/aircraft/defaults.ts";
import { parseAircraftFile } from "../../src/aircraft/index.ts";
import { parseCall } from "../../src/apps/commands/parseCall.ts";
import { COMMANDS } from "../../src/apps/commands/registry.ts";
import { LONGEST_LINE, MOST_BYTES, MOST_COLUMNS, MOST_ROWS } from "../../src/log/reading/limits.ts";
import { PACKAGE_FOLDER } from "./inMemory.ts";

const readme = readFileSync(resolve(PACKAGE_FOLDER, "README.md"), "utf8");
const blocks = [...readme.matchAll(/^```\w*\n([\s\S]*?)^```/gm)].map(([, text]) => text ?? "");
/** The words of each command line shown; what it does follows after two blanks or more. */
const commandLines = blocks
  .flatMap((block) => block.split("\n"))
  .flatMap((line) => /^(?:npx )?tallywatt (.*?)(?: {2,}|$)/.exec(line)?.[1] ?? []);
const scripts = [...readme.matchAll(/npm run ([\w:-]+)/g)].map(([, name]) => name ?? "");

describe("the README", () => {
  it("shows commands and an aircraft file", () => {
    expect(commandLines.length).toBeGreaterThanOrEqual(4);
    expect(scripts).toContain("demo");
  });

  it.each(commandLines)("tallywatt %s is a line that the command takes", async (line) => {
    const [name = "", ...words] = line.split(" ");
    const entry = COMMANDS[name];
    expect(entry, `there is no command ${name}`).toBeDefined();
    const { command } = await entry!.load();
    expect(() => parseCall(name, command, words)).not.toThrow();
  });

  it("names only scripts of the package", () => {
    const { scripts: known } = JSON.parse(readFileSync(resolve(PACKAGE_FOLDER, "package.json"), "utf8")) as {
      scripts: Record<string, string>;
    };
    for (const name of scripts) expect(Object.keys(known)).toContain(name);
  });

  it("shows an aircraft file that is read as it stands", () => {
    const files = blocks.filter((block) => block.trimStart().startsWith("{"));
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) expect(parseAircraftFile(file, "README")).toMatchObject({ state: "read" });
  });

  it("states the limits and the assumed accuracies as they are", () => {
    expect(readme).toContain(`Lines up to ${LONGEST_LINE / 1024 ** 2} MB`);
    expect(readme).toContain(`${MOST_COLUMNS.toLocaleString("en")} columns`);
    expect(readme).toContain(`${MOST_ROWS.toLocaleString("en")} rows, ${Math.floor(MOST_BYTES / 1e6)} MB`);
    const percent = (key: "sensors.currentAccuracyPct" | "sensors.voltageAccuracyPct") =>
      `${DEFAULTS[key].value} %`;
    expect(readme).toContain(
      `${percent("sensors.currentAccuracyPct")} (current), ${percent("sensors.voltageAccuracyPct")} (voltage) and ${DEFAULTS["sensors.temperatureAccuracyC"].value} °C are assumed`,
    );
  });
});
