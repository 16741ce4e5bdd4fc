import { readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { pageWords } from "../../../src/apps/page/client/pageWords.ts";

const SOURCE = resolve(import.meta.dirname, "../../../src");
/** Who the option is for there, and not for the page. */
const OF_COMMANDS = /^apps\//;

/** Lines of the core that put an option of the command line into a sentence. */
function sentencesWithOptions(): readonly string[] {
  const files = readdirSync(SOURCE, { recursive: true, encoding: "utf8" })
    .map((path) => path.replaceAll("\\", "/"))
    .filter((path) => /entences\.ts$/.test(path) && !OF_COMMANDS.test(path));
  return files.flatMap((path) =>
    readFileSync(resolve(SOURCE, path), "utf8")
      .split("\n")
      .filter((line) => /["`'].*--[a-z]/.test(line) && !/^\s*(\/\*|\*|\/\/)/.test(line)),
  );
}

describe("sentences of the core on the page", () => {
  const lines = sentencesWithOptions();

  it("are found", () => {
    expect(lines.length).toBeGreaterThan(10);
  });

  it("name no option of the command line", () => {
    // A number that the sentence will hold stands for its placeholder.
    const left = lines
      .map((line) => pageWords(line.replace(/\$\{[^}]*\}/g, "6")))
      .filter((line) => /--[a-z]/.test(line));
    expect(left).toEqual([]);
  });

  it("say the remedy of the page", () => {
    expect(pageWords("Give the rows per second, as in --rate 10.")).toBe(
      "Type the rows a second under the columns.",
    );
    expect(pageWords("state it with --ambient C")).toBe("state it when you keep the flight");
    expect(pageWords("a-b--c")).toBe("a-b--c");
  });
});
