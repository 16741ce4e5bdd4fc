import { describe, expect, it } from "vitest";
import {
  embedJson,
  escapeHtml,
  html,
  joined,
  NOTHING,
  shortened,
  trusted,
  visibleText,
} from "../../../src/show/charts/index.ts";
import { ATTACK_STRINGS } from "../../support/attackStrings.ts";

describe("escapeHtml", () => {
  it.each(ATTACK_STRINGS)("leaves nothing of %j that could begin markup or end an attribute", (attack) => {
    const escaped = escapeHtml(attack);
    expect(escaped).not.toMatch(/[<>"'`]/);
    expect(escaped.replace(/&(amp|lt|gt|quot|#39|#96);/g, "")).not.toContain("&");
  });

  it("gives back the same text once a browser has read it", () => {
    const read = escapeHtml(`a < b & "c" 'd' \`e\` > f`)
      .replaceAll("&lt;", "<")
      .replaceAll("&gt;", ">")
      .replaceAll("&quot;", '"')
      .replaceAll("&#39;", "'")
      .replaceAll("&#96;", "`")
      .replaceAll("&amp;", "&");
    expect(read).toBe(`a < b & "c" 'd' \`e\` > f`);
  });
});

describe("visibleText", () => {
  it("spells out control, direction and invisible characters", () => {
    expect(visibleText("a\u0000b\u202ec\u200bd\ufeff")).toBe("a⟨U+0000⟩b⟨U+202E⟩c⟨U+200B⟩d⟨U+FEFF⟩");
  });

  it("turns line breaks and tabs into one space and half characters into the replacement mark", () => {
    expect(visibleText("a\r\nb\tc\ud800d")).toBe("a b c\ufffdd");
  });

  it("keeps letters of every script, signs and whole pairs", () => {
    expect(visibleText("Höhe °C Ω 温度 🛩")).toBe("Höhe °C Ω 温度 🛩");
  });

  it("cuts a text of endless length and says how much is missing", () => {
    const shown = visibleText("x".repeat(5000));
    expect(shown).toContain("(3000 more characters)");
    expect(shown.length).toBeLessThan(2100);
  });
});

describe("shortened", () => {
  it("counts characters, not halves of them", () => {
    expect(shortened("🛩🛩🛩🛩", 3)).toEqual({ short: "🛩🛩…", isCut: true });
    expect(shortened("abc", 3)).toEqual({ short: "abc", isCut: false });
  });
});

describe("embedJson", () => {
  it.each(ATTACK_STRINGS)("keeps %j a string that no parser of markup can see", (attack) => {
    const text = embedJson({ attack });
    expect(text).not.toMatch(/[<>&\u2028\u2029]/);
    expect(JSON.parse(text)).toEqual({ attack });
  });
});

describe("html", () => {
  it("escapes strings, keeps markup, drops null and joins lists", () => {
    const inner = html`<b>${"<"}</b>`;
    expect(html`${inner}${null}${[inner, ">"]}${2.5}`.text).toBe("<b>&lt;</b><b>&lt;</b>&gt;2.5");
    expect(joined([inner, NOTHING, trusted("<i>")], "|").text).toBe("<b>&lt;</b>||<i>");
  });
});
