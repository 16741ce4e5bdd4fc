import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
// @ts-expect-error plain JavaScript without types
import { GENERATED_FILE, generatedText } from "../../../scripts/reportAssets.mjs";
import {
  REPORT_SCRIPT,
  REPORT_STYLE,
  SCRIPT_HASH,
  STYLE_HASH,
} from "../../../src/show/report/assets/generated.ts";

describe("the report's style and script", () => {
  it("are those of their sources (else run: node scripts/reportAssets.mjs)", async () => {
    expect(readFileSync(GENERATED_FILE, "utf8")).toBe(await generatedText());
  });

  it.each([
    ["style", REPORT_STYLE, STYLE_HASH],
    ["script", REPORT_SCRIPT, SCRIPT_HASH],
  ])("%s carries its digest", (_name, text, hash) => {
    expect(hash).toBe(`sha256-${createHash("sha256").update(text, "utf8").digest("base64")}`);
  });

  it("ask for nothing and cannot end their element", () => {
    for (const text of [REPORT_SCRIPT, REPORT_STYLE]) {
      expect(text).not.toMatch(/https?:|\/\/|url\(|@import|<\/|<!--/);
    }
    expect(REPORT_SCRIPT).not.toMatch(
      /innerHTML|outerHTML|insertAdjacentHTML|document\.write|eval\(|fetch\(|XMLHttp/,
    );
  });
});
