import { execFileSync, spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { networkInterfaces, tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { EXIT } from "../../src/apps/commands/exitCodes.ts";
import { BUILT_COMMAND, ensureBuilt } from "../support/built.ts";
import { SAMPLE_AIRCRAFT, sampleLog } from "./sampleLog.ts";

const ROOT = resolve(import.meta.dirname, "../..");
const COMMAND = BUILT_COMMAND;

const folder = mkdtempSync(join(tmpdir(), "tallywatt-test-"));

beforeAll(() => {
  ensureBuilt();
  writeFileSync(join(folder, "flight.csv"), sampleLog());
  writeFileSync(join(folder, "heron.json"), SAMPLE_AIRCRAFT);
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(words: readonly string[], input = "") {
  return spawnSync(process.execPath, [COMMAND, ...words], { cwd: folder, encoding: "utf8", input });
}

function shell(line: string) {
  return spawnSync("bash", ["-c", line], { cwd: folder, encoding: "utf8", env: { ...process.env, COMMAND } });
}

describe("the built command", () => {
  it("is one program with its parts, started by its first line", () => {
    expect(readFileSync(COMMAND, "utf8")).toMatch(/^#!\/usr\/bin\/env node\n/);
    expect(execFileSync(COMMAND, ["--version"], { encoding: "utf8" })).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  it.each([
    [["check", "flight.csv"], EXIT.done],
    [["check", "flight.csv", "--frob"], EXIT.usage],
    [["check", "no.csv"], EXIT.unusable],
    [["check", "."], EXIT.unusable],
  ])("%j ends with %i, with no terminal and nothing on standard input", (words, exit) => {
    const ran = run(words);
    expect(ran.status, ran.stderr).toBe(exit);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: no colour into a pipe
    expect(ran.stdout + ran.stderr).not.toMatch(/\u001B/);
  });

  it("reads standard input", () => {
    const ran = run(["check", "-", "--json"], sampleLog());
    expect(ran.status).toBe(EXIT.done);
    expect((JSON.parse(ran.stdout) as { log: { rows: number } }).log.rows).toBe(600);
  });

  it("tells many logs, which it checks on several threads, as it tells each alone and in their order", () => {
    const logs = Array.from({ length: 9 }, (_, at) => `many-${at}.csv`);
    for (const [at, log] of logs.entries()) {
      const text = sampleLog().split("\n");
      writeFileSync(join(folder, log), at === 5 ? "no log" : text.slice(0, text.length - 10 * at).join("\n"));
    }
    rmSync(join(folder, logs[3]!));
    const words = ["--aircraft", "heron.json", "--json", "--force", "--report=many-reports"];
    const together = run(["check", ...logs, ...words]);
    const report = (at: number) => readFileSync(join(folder, "many-reports", `many-${at}.html`), "utf8");
    const { checks } = JSON.parse(together.stdout) as { checks: unknown[] };
    expect(checks).toHaveLength(9);
    expect(together.status).toBe(EXIT.unusable);
    expect(together.stderr.indexOf(logs[3]!)).toBeLessThan(together.stderr.indexOf(logs[5]!));
    for (const at of [3, 5, 8]) {
      const alone = run(["check", logs[at]!, ...words.slice(0, -1), `--report=alone-${at}.html`]);
      expect(checks[at]).toEqual(JSON.parse(alone.stdout));
      if (at === 8) expect(report(8)).toBe(readFileSync(join(folder, "alone-8.html"), "utf8"));
      else expect(together.stderr).toContain(alone.stderr);
    }
    expect(readdirSync(join(folder, "many-reports"))).toHaveLength(7);
  });

  it("ends quietly when its reader has seen enough", () => {
    const ran = shell('set -o pipefail; node "$COMMAND" check flight.csv --json | head -1');
    expect(ran.stdout).toBe("{\n");
    expect(ran.stderr).toBe("");
    expect(ran.status).toBe(EXIT.done);
  });

  it("tells when standard output cannot take the result", () => {
    const ran = shell('node "$COMMAND" check flight.csv --json > /dev/full');
    expect(ran.status).toBe(EXIT.cannotWrite);
    expect(ran.stderr).toContain("ENOSPC");
  });

  it("writes the page as one file of less than 700 kB, and over no file of someone else's", () => {
    writeFileSync(join(folder, "mine.html"), "<p>mine");
    expect(run(["page", "--save", "mine.html"]).status).toBe(EXIT.cannotWrite);
    expect(readFileSync(join(folder, "mine.html"), "utf8")).toBe("<p>mine");
    for (const other of [
      ["--book", "season"],
      ["--port", "8123"],
    ]) {
      const ran = run(["page", "--save", "page.html", ...other]);
      expect(ran.status).toBe(EXIT.usage);
      expect(ran.stderr).toContain(`${other[0]} does nothing with --save`);
    }
    for (const _twice of [1, 2]) expect(run(["page", "--save", "page.html"]).status).toBe(EXIT.done);
    const bytes = statSync(join(folder, "page.html")).size;
    console.log(`the page as one file: ${bytes} bytes`);
    expect(bytes).toBeLessThan(700_000);
    expect(readFileSync(join(folder, "page.html"), "utf8")).toContain(
      "default-src 'none'; script-src 'sha256-",
    );
  });

  it("serves the page to this machine alone until Ctrl-C, and keeps what was asked of it", async () => {
    const served = spawn(process.execPath, [COMMAND, "page", "--book", "served"], { cwd: folder });
    const ended = new Promise<number | null>((resolve) => served.once("exit", resolve));
    const address = await new Promise<string>((resolve) => {
      served.stdout.once("data", (line: Buffer) => resolve(line.toString().trim()));
    });
    const { origin, hostname, port, hash } = new URL(address);
    expect(hostname).toBe("127.0.0.1");
    const outside = Object.values(networkInterfaces()).flatMap((own) => own ?? []);
    for (const { address: other } of outside.filter(
      ({ internal, family }) => !internal && family === "IPv4",
    )) {
      await expect(fetch(`http://${other}:${port}/`)).rejects.toThrow();
    }
    expect((await fetch(origin)).headers.get("content-security-policy")).toMatch(
      /connect-src 'self'; frame-anc/,
    );
    const headers = { authorization: `Bearer ${hash.slice(1)}` };
    expect(await (await fetch(`${origin}/book`, { headers })).json()).toMatchObject({ files: {} });
    expect(run(["page", "--port", port]).status).toBe(EXIT.usage);
    served.kill("SIGINT");
    expect(await ended).toBe(EXIT.interrupted);
    await expect(fetch(origin)).rejects.toThrow();
    expect(existsSync(join(folder, "served"))).toBe(false);
  });

  it("leaves no half report when the disk takes no more", () => {
    const ran = shell('ulimit -f 8; node "$COMMAND" check flight.csv --report=full/limit.html');
    expect(ran.status, ran.stderr).toBe(EXIT.cannotWrite);
    expect(ran.stderr).toMatch(/cannot be written: .*\d+ bytes are needed/);
    expect(readdirSync(join(folder, "full"))).toEqual([]);
  });

  it("ends with 130 when interrupted, and writes nothing", async () => {
    const child = spawn(process.execPath, [COMMAND, "check", "-", "--report=stopped.html"], { cwd: folder });
    // More than a pipe holds: once it is taken, the program runs and is reading.
    await new Promise((done) => child.stdin.write("0.2,33.4,12.5\n".repeat(100_000), done));
    child.kill("SIGINT");
    const exit = await new Promise((done) => child.on("exit", done));
    expect(exit).toBe(EXIT.interrupted);
    expect(existsSync(join(folder, "stopped.html"))).toBe(false);
  });

  it("gives the same bytes in any time zone and language", () => {
    const runs = [
      { TZ: "UTC", LANG: "en_US.UTF-8" },
      { TZ: "America/Denver", LANG: "de_DE.UTF-8" },
      { TZ: "Pacific/Auckland", LANG: "C" },
    ].map((env, index) => {
      const words = [
        COMMAND,
        "check",
        "flight.csv",
        "--aircraft",
        "heron.json",
        `--report=zone-${index}.html`,
      ];
      const ran = spawnSync(process.execPath, words, {
        cwd: folder,
        encoding: "utf8",
        env: { ...process.env, ...env },
      });
      const report = readFileSync(join(folder, `zone-${index}.html`), "utf8");
      return ran.stdout.replace(/zone-\d/, "") + report;
    });
    expect(new Set(runs).size).toBe(1);
  });
});

describe("the package", () => {
  const listed = (): readonly string[] => {
    const text = execFileSync("npm", ["pack", "--dry-run", "--json", "--ignore-scripts"], {
      cwd: ROOT,
      encoding: "utf8",
    });
    const [packed] = JSON.parse(text) as readonly { readonly files: readonly { readonly path: string }[] }[];
    return packed?.files.map(({ path }) => path) ?? [];
  };

  it("ships what it runs on and nothing else", () => {
    const files = listed();
    for (const path of [
      "dist/tallywatt.js",
      "dist/index.js",
      "dist/types/index.d.ts",
      "package.json",
      "LICENSE",
    ]) {
      expect(files).toContain(path);
    }
    for (const name of readdirSync(join(ROOT, "schemas"))) expect(files).toContain(`schemas/${name}`);
    expect(files).toContain("fixtures/tern/aircraft.json");
    const allowed = /^(dist\/|schemas\/|fixtures\/tern\/|(package\.json|README\.md|LICENSE|CHANGELOG\.md)$)/;
    expect(files.filter((path) => !allowed.test(path))).toEqual([]);
  });

  it("has a closed door: the library, its schemas, and no file beside them", async () => {
    const text = readFileSync(join(ROOT, "package.json"), "utf8");
    const { exports, bin } = JSON.parse(text) as {
      exports: Record<string, unknown>;
      bin: Record<string, string>;
    };
    expect(bin).toEqual({ tallywatt: "dist/tallywatt.js" });
    expect(Object.keys(exports).some((path) => path.includes("*"))).toBe(false);
    const targets = Object.values(exports).flatMap((target) =>
      typeof target === "string" ? [target] : Object.values(target as object),
    );
    for (const target of targets) expect(existsSync(join(ROOT, String(target))), String(target)).toBe(true);
    const ask = (path: string) =>
      shell(`cd "${ROOT}" && node --input-type=module -e 'await import("${path}")'`);
    expect(ask("tallywatt").status).toBe(0);
    expect(ask("tallywatt/dist/tallywatt.js").stderr).toContain("ERR_PACKAGE_PATH_NOT_EXPORTED");
  });

  it("checks a log through the library alone", () => {
    const program = [
      'import { checkLog, NO_FACTS, NO_BUDGET } from "tallywatt";',
      'import { readFileSync } from "node:fs";',
      "const none = { columns: new Map(), units: new Map(), rateHz: null, decimalMark: null, delimiter: null, dateOrder: null, cells: null, polePairs: null };",
      'const request = { file: "f", sha256: "", aircraft: null, facts: NO_FACTS, budget: NO_BUDGET, readings: [], options: none, day: { ambientC: null, startPct: null } };',
      "console.log(checkLog(readFileSync(process.env.LOG), request).check.flights.length);",
    ].join("\n");
    const ran = spawnSync(process.execPath, ["--input-type=module", "-e", program], {
      cwd: ROOT,
      encoding: "utf8",
      env: { ...process.env, LOG: join(folder, "flight.csv") },
    });
    expect(ran.stdout.trim(), ran.stderr).toBe("1");
  });
});
