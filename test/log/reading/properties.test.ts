import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { codesOf, FLIGHT, outcomeOf } from "./support.ts";

const SEED = 20_260_614;
const PARAMETERS = { seed: SEED, numRuns: 300, verbose: fc.VerbosityLevel.None } as const;
const LOG = `time_s,rpm,esc_temp_c,pack_v,current_a\n${FLIGHT.slice(0, 40)
  .map(({ s, rpm, celsius, volts, amps }) => [s, rpm, celsius, volts, amps].join(","))
  .join("\n")}\n`;
const PIECES = fc.constantFrom(
  "time",
  "time_s",
  "volts",
  "amps",
  "rpm",
  ",",
  ";",
  "\t",
  "|",
  " ",
  "\n",
  "\r",
  "\r\n",
  '"',
  "#",
  "0",
  "1",
  "12.5",
  "33,2",
  "-",
  "NaN",
  "1e9",
  "10:00:00",
  "2026-05-01",
  "03/04/2026",
  "\u0000",
  "\ufeff",
  "\ufffd",
  "°C",
  "__proto__",
  "=1+1",
  "sep=;",
  "cell 1",
  "%",
);

/** Whatever comes in, an outcome comes out that holds no infinite number and names its reason. */
function expectSound(input: string | Uint8Array): void {
  const outcome = outcomeOf(input);
  if (outcome.state !== "read") {
    expect(outcome.notices.some((notice) => notice.severity === outcome.state)).toBe(true);
    return;
  }
  const { log } = outcome;
  for (const values of [log.timeS, ...log.channels.values()]) {
    expect(values).toHaveLength(log.rows);
    expect(values.some((value) => value === Infinity || value === -Infinity)).toBe(false);
  }
}

describe(`any input (seed ${SEED})`, () => {
  it("random bytes never throw", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => expectSound(bytes)),
      PARAMETERS,
    );
  });

  it("random text never throws", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 300 }), (text) => expectSound(text)),
      PARAMETERS,
    );
  });

  it("random pieces of logs never throw", () => {
    const text = fc.array(PIECES, { maxLength: 120 }).map((pieces) => pieces.join(""));
    fc.assert(
      fc.property(text, (each) => expectSound(each)),
      { ...PARAMETERS, numRuns: 1500 },
    );
  });

  it("a log with bytes changed never throws", () => {
    const changes = fc.array(fc.tuple(fc.nat(LOG.length - 1), fc.nat(255)), { maxLength: 8 });
    const changed = changes.map((list) => {
      const bytes = new TextEncoder().encode(LOG);
      for (const [at, byte] of list) bytes[at] = byte;
      return bytes;
    });
    fc.assert(
      fc.property(changed, (bytes) => expectSound(bytes)),
      { ...PARAMETERS, numRuns: 1000 },
    );
  });

  it("every prefix keeps its complete lines and nothing else", () => {
    const bytes = new TextEncoder().encode(LOG);
    for (let cut = 0; cut < bytes.length; cut++) {
      const outcome = outcomeOf(bytes.slice(0, cut));
      const lines = LOG.slice(0, cut).split("\n");
      const complete = Math.max(0, lines.length - 2);
      if (complete < 2) continue;
      expect(outcome.state, `cut at ${cut}`).toBe("read");
      if (outcome.state === "read") expect(outcome.log.rows, `cut at ${cut}`).toBe(complete);
      expect(codesOf(outcome).includes("last-line-cut"), `cut at ${cut}`).toBe(lines.at(-1) !== "");
    }
  });

  it("a column named __proto__ is a plain name", () => {
    outcomeOf(
      'time_s,pack_v,current_a,__proto__,constructor\n0,30,1,{"polluted":1},x\n1,30,1,{"polluted":1},x\n',
    );
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});
