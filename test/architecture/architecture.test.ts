import { readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { type SourceFile, violations } from "./imports.ts";

const SOURCE = resolve(import.meta.dirname, "../../src");

function sourceFiles(): readonly SourceFile[] {
  return readdirSync(SOURCE, { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".ts"))
    .map((path) => ({ path: path.replaceAll("\\", "/"), text: readFileSync(resolve(SOURCE, path), "utf8") }));
}

describe("the house", () => {
  const files = sourceFiles();

  it("is found and is not empty", () => {
    expect(files.length).toBeGreaterThan(20);
  });

  it("keeps its directions and its doors", () => {
    expect(violations(files)).toEqual([]);
  });

  it.each([
    [
      "an upstream folder that imports downstream",
      "base/quantity/planted.ts",
      'import { x } from "../../flight/check/index.ts";',
      "not upstream",
    ],
    [
      "an import past a folder's door",
      "flight/check/planted.ts",
      'import { x } from "../../log/reading/contract.ts";',
      "door",
    ],
    [
      "measuring that knows the budget",
      "flight/analysis/planted.ts",
      'import type { Budget } from "../../aircraft/budget.ts";',
      "only the facts",
    ],
    [
      "a second door to a package",
      "show/report/planted.ts",
      'import { scaleLinear } from "d3";',
      "whose door is",
    ],
    [
      "a part of a package through the wrong door",
      "flight/check/planted.ts",
      'const p = await import("papaparse");',
      "whose door is",
    ],
    [
      "a core file that reads the disk",
      "log/reading/planted.ts",
      'import { readFileSync } from "node:fs";',
      "touch the machine",
    ],
    [
      "a command that opens a socket",
      "apps/commands/planted.ts",
      'import { createServer } from "node:http";',
      "touches the network",
    ],
    [
      "a page that asks somebody",
      "apps/page/core/planted.ts",
      "const answer = await fetch(address);",
      "touches the network",
    ],
    ["a file outside the house", "planted/elsewhere.ts", "export const x = 1;", "no folder of the house"],
  ])("fails on %s", (_what, path, text, expected) => {
    const planted = violations([...files, { path, text }]);
    expect(planted.some((line) => line.includes(path) && line.includes(expected))).toBe(true);
  });

  it("fails on a cycle inside a folder", () => {
    const planted = [
      { path: "physics/one.ts", text: 'import { two } from "./two.ts";' },
      { path: "physics/two.ts", text: 'export { one } from "./one.ts";' },
    ];
    expect(violations([...files, ...planted]).some((line) => line.startsWith("cycle:"))).toBe(true);
  });

  it("fails on a second file that opens a package inside its own folder", () => {
    const planted = [
      { path: "show/charts/one.ts", text: 'import { scaleLinear } from "d3";' },
      { path: "show/charts/two.ts", text: 'import { line } from "d3";' },
    ];
    expect(violations(planted).some((line) => line.startsWith("d3 has 2 doors"))).toBe(true);
  });
});
