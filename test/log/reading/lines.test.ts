import { describe, expect, it } from "vitest";
import { findEncoding } from "../../../src/log/reading/encoding.ts";
import { lineBlocks } from "../../../src/log/reading/lines.ts";

function linesOf(bytes: Uint8Array, bytesAtOnce?: number) {
  const decoding = findEncoding(bytes);
  if (typeof decoding === "string") throw new Error(decoding);
  const blocks = [...lineBlocks(bytes, decoding, bytesAtOnce)];
  let next = 1;
  for (const block of blocks) {
    expect(block.firstLine).toBe(next);
    next += block.lines.length;
  }
  return { lines: blocks.flatMap((block) => block.lines), isTerminated: blocks.at(-1)!.isTerminated };
}

const utf8 = (text: string) => new TextEncoder().encode(text);
const utf16 = (text: string) =>
  Uint8Array.from(
    [...`\ufeff${text}`].flatMap((each) => [each.charCodeAt(0) & 255, each.charCodeAt(0) >> 8]),
  );

describe("lines of a file", () => {
  it.each([
    ["LF", "a\nb\n\nc\n", ["a", "b", "", "c"]],
    ["CRLF", "a\r\nb\r\n\r\nc\r\n", ["a", "b", "", "c"]],
    ["CR", "a\rb\r\rc\r", ["a", "b", "", "c"]],
    ["CRCRLF", "a\r\r\nb\r\r\nc\r\r\n", ["a", "b", "c"]],
    ["mixed", "a\nb\r\nc\rd\n", ["a", "b", "c", "d"]],
  ])("ended by %s", (_, text, lines) => expect(linesOf(utf8(text))).toEqual({ lines, isTerminated: true }));

  it("say when the last has no end", () =>
    expect(linesOf(utf8("a\nb"))).toEqual({ lines: ["a", "b"], isTerminated: false }));

  it("lose a byte order mark, also one in the middle", () => {
    expect(linesOf(utf8("\ufeffa\n\ufeffb\n")).lines).toEqual(["a", "b"]);
  });

  it("hold the signs of Windows-1252, also in the last block", () => {
    const bytes = Uint8Array.from([0x41, 0x20, 0x92, 0x20, 0x80, 0x0a, 0x62, 0x0a]);
    expect(linesOf(bytes).lines).toEqual(["A \u2019 \u20ac", "b"]);
  });

  it("are the same for any size of block", () => {
    const text = "Zeit;Spannung;°C\r\n0,0;33,2;20\r\n\r\r\n0,2;33,1;21\r\u2212;\ud83d\udee9;\n\nend";
    for (const bytes of [utf8(text), utf8(`\ufeff${text}`), utf16(text)]) {
      const whole = linesOf(bytes);
      for (const size of [1, 2, 3, 7, 64, 1024, 65_536])
        expect(linesOf(bytes, size), `${size} bytes`).toEqual(whole);
    }
  });
});
