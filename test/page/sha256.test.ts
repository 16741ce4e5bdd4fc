import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { fromBase64, toBase64 } from "../../src/apps/page/core/base64.ts";
import { sha256Of } from "../../src/apps/page/core/sha256.ts";

describe("sha256Of", () => {
  // NIST, FIPS 180-2 (2002), appendix B.1 and B.2.
  it.each([
    ["abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"],
    [
      "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
      "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
    ],
  ])("gives the published digest of %s", (text, digest) => expect(sha256Of(text)).toBe(digest));

  it("gives the digest that Node gives, for every length around whole blocks and for other alphabets", () => {
    for (let length = 0; length <= 200; length += 1) {
      const bytes = Uint8Array.from({ length }, (_, at) => (at * 131 + length) % 256);
      expect(sha256Of(bytes), String(length)).toBe(createHash("sha256").update(bytes).digest("hex"));
    }
    expect(sha256Of("Übung ✈ 翼")).toBe(createHash("sha256").update("Übung ✈ 翼").digest("hex"));
  });
});

describe("base 64", () => {
  it("is what Node writes and reads, also across its parts", () => {
    for (const length of [0, 1, 2, 3, 24_575, 24_576, 24_577, 60_000]) {
      const bytes = Uint8Array.from({ length }, (_, at) => (at * 89) % 256);
      expect(toBase64(bytes) === Buffer.from(bytes).toString("base64"), String(length)).toBe(true);
      expect(Buffer.from(fromBase64(toBase64(bytes))).equals(Buffer.from(bytes))).toBe(true);
    }
  });
});
