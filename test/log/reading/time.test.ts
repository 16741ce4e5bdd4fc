import { describe, expect, it } from "vitest";
import { codesOf, FLIGHT, headerOf, logOf, logText, noticesOf, outcomeOf, questionOf } from "./support.ts";

/** Seconds of the day as 10:00:00.0 and later. */
function clock(s: number, places = 1, start = 36_000): string {
  const all = (start + s) % 86_400;
  const seconds = (all % 60).toFixed(places).padStart(places === 0 ? 2 : 3 + places, "0");
  return `${String(Math.floor(all / 3600)).padStart(2, "0")}:${String(Math.floor(all / 60) % 60).padStart(2, "0")}:${seconds}`;
}

function timed(header: string, cell: (s: number) => string | number): string {
  return logText(`${header};pack_v;current_a`, (row) => [cell(row.s), row.volts, row.amps], ";");
}

const EPOCH = 1_781_431_200n;

describe("clocks of a log", () => {
  it.each([
    ["time_s", (s: number) => s, "elapsed", null, 0.1],
    ["time", (s: number) => s, "elapsed", null, 0.1],
    ["t", (s: number) => s + 100, "elapsed", null, 0.1],
    ["time_ms", (s: number) => Math.round(s * 1e3), "elapsed", 4_294_967.296, 1e-3],
    ["time", (s: number) => Math.round(s * 1e3), "elapsed", 4_294_967.296, 1e-3],
    ["millis", (s: number) => 4_000_000_000 + Math.round(s * 1e3), "elapsed", 4_294_967.296, 1e-3],
    ["Time [us]", (s: number) => Math.round(s * 1e6), "elapsed", 4294.967296, 1e-6],
    [
      "timestamp",
      (s: number) =>
        `${EPOCH}.${Math.round((s % 1) * 10)}`.replace(String(EPOCH), String(EPOCH + BigInt(Math.floor(s)))),
      "epoch",
      null,
      0.1,
    ],
    ["unix_ms", (s: number) => String(EPOCH * 1000n + BigInt(Math.round(s * 1e3))), "epoch", null, 1e-3],
    [
      "timestamp_us",
      (s: number) => String(EPOCH * 1_000_000n + BigInt(Math.round(s * 1e6))),
      "epoch",
      null,
      1e-6,
    ],
    [
      "timestamp",
      (s: number) => String(EPOCH * 1_000_000_000n + BigInt(Math.round(s * 1e9))),
      "epoch",
      null,
      1e-9,
    ],
    ["ms_of_day", (s: number) => 36_000_000 + Math.round(s * 1e3), "timeOfDay", 86_400, 1e-3],
    ["Clock", (s: number) => clock(s), "timeOfDay", 86_400, 0.1],
    ["time", (s: number) => `2026-05-01T${clock(s)}+02:00`, "dateTime", null, 0.1],
    ["time", (s: number) => `14.06.2026 ${clock(s)}`, "dateTime", null, 0.1],
    [
      "Time",
      (s: number) => `${Math.floor(s / 60)}:${(s % 60).toFixed(1).padStart(4, "0")}`,
      "elapsed",
      3600,
      0.1,
    ],
    ["day", (s: number) => (46_187.4 + s / 86_400).toFixed(9), "elapsed", null, 0.0864],
  ] as const)("%s (%#)", (header, cell, kind, wrapS, resolutionS) => {
    const log = logOf(timed(header, cell));
    expect(log.clock).toMatchObject({ kind, wrapS });
    expect(log.clock.resolutionS).toBeCloseTo(resolutionS, 9);
    FLIGHT.forEach((row, index) => {
      expect(Math.abs(log.timeS[index]! - row.s)).toBeLessThan(1e-4);
    });
  });

  it("shows the clock as written", () => {
    expect(logOf(timed("Clock", (s) => clock(s))).clock.textOfRow(1)).toBe("10:00:00.2");
    expect(logOf(timed("time", (s) => `14.06.2026 ${clock(s)}`)).clock.textOfRow(7)).toBe(
      "14.06.2026 10:00:01.4",
    );
    const offset = logOf(timed("time", (s) => `2026-05-01T${clock(s)}+02:00`));
    expect(offset.clock.textOfRow(1)).toBe("2026-05-01T10:00:00.2+02:00");
    expect(logOf(timed("time_s", (s) => s)).clock.textOfRow(1)).toBeNull();
    expect(logOf(timed("t", (s) => `${clock(s).slice(0, 8)} am`)).clock.textOfRow(0)).toBe("10:00:00 am");
  });

  it("a date column completes the clock column, across midnight too", () => {
    const text = logText(
      "Date;Time;pack_v;current_a",
      (row) => {
        const day = row.s < 20 ? "31.12.2026" : "01.01.2027";
        return [day, clock(row.s, 1, 86_380), row.volts, row.amps];
      },
      ";",
    );
    const log = logOf(text);
    expect(log.clock.kind).toBe("dateTime");
    expect(log.timeS.at(-1)).toBeCloseTo(59.8, 6);
    expect(log.clock.textOfRow(299)).toBe("01.01.2027 00:00:39.8");
  });

  it("a clock that wraps at midnight is left as it is, with the wrap stated", () => {
    const log = logOf(timed("time", (s) => clock(s, 1, 86_390)));
    expect(log.clock.wrapS).toBe(86_400);
    expect(log.timeS.at(-1)).toBeCloseTo(59.8 - 86_400, 6);
  });

  it("of two clocks the one that moves in more rows is taken, the other shows the date", () => {
    const text = logText(
      "Date Time;Elapsed ms;pack_v;current_a",
      (row) => {
        return [`2026-06-14 ${clock(row.s).slice(0, 8)}`, Math.round(row.s * 1e3), row.volts, row.amps];
      },
      ";",
    );
    const log = logOf(text);
    expect(headerOf(log, "time")).toBe("Elapsed ms");
    expect(log.clock.textOfRow(7)).toBe("2026-06-14 10:00:01");
  });

  it("several rows per whole second keep the second as written", () => {
    const log = logOf(timed("time", (s) => clock(Math.floor(s), 0)));
    expect(log.clock.resolutionS).toBe(1);
    expect([...log.timeS.slice(0, 7)]).toEqual([0, 0, 0, 0, 0, 1, 1]);
  });

  it("an ambiguous date is noted and --date-order settles it", () => {
    const text = timed("time", (s) => `03/04/2026 ${clock(s)}`);
    expect(noticesOf(outcomeOf(text))).toMatchObject([
      { code: "date-ambiguous", severity: "note", options: ["--date-order dmy", "--date-order mdy"] },
    ]);
    expect(codesOf(outcomeOf(text, { dateOrder: "mdy" }))).toEqual([]);
    expect(codesOf(outcomeOf(timed("time", (s) => `2026-04-03 ${clock(s)}`)))).toEqual([]);
  });

  it.each([
    ["time_s", (s: number) => Math.round(s * 1e3), "--unit time=ms"],
    ["time_ms", (s: number) => s, "--unit time=s"],
    ["time_s", (s: number) => Math.round(s * 1e6), "--unit time=us"],
  ] as const)("%s in another unit asks for it (%#)", (header, cell, option) => {
    const question = questionOf(timed(header, cell));
    expect(question.code).toBe("time-unit-unclear");
    expect(question.options).toContain(option);
    const log = logOf(timed(header, cell), { units: new Map([["time", option.split("=")[1]!]]) });
    expect(log.timeS.at(-1)).toBeCloseTo(59.8, 9);
  });

  it("more than a day is a question of unit", () => {
    const text = logText("time_s;pack_v;current_a", (row) => [row.s * 2000, row.volts, row.amps], ";");
    expect(questionOf(text).code).toBe("time-unit-unclear");
  });

  it("no clock and a constant clock ask for the rate; a left-out line keeps its place", () => {
    expect(questionOf(timed("sample", (s) => Math.round(s * 5)))).toMatchObject({
      code: "time-missing",
      options: ["--rate 1"],
      text: expect.stringContaining("sample rate"),
    });
    const frozen = timed("time_s", () => 12);
    expect(questionOf(frozen)).toMatchObject({
      code: "time-constant",
      text: expect.stringMatching(/time.*constant/),
    });
    const lines = frozen.split("\n");
    lines[10] = "12;1";
    const log = logOf(lines.join("\n"), { rateHz: 5 });
    expect(log.clock.kind).toBe("none");
    expect([log.timeS[8], log.timeS[9]]).toEqual([1.6, 2]);
    lines[10] = "\0\0\0\0";
    const damaged = logOf(lines.join("\n"), { rateHz: 5 });
    expect([damaged.timeS[8], damaged.timeS[9]]).toEqual([1.6, 2]);
  });

  it.each([
    ["tenths of a second", (s: number) => Math.round(s * 10), {}, ["--unit time=0.1s", "--unit time=s"]],
    [
      "a bare row counter",
      (s: number) => Math.round(s * 5),
      {},
      ["--unit time=0.1s", "--rate 1", "--unit time=s"],
    ],
    ["two seconds or tenths", (s: number) => Math.round(s * 50), {}, ["--unit time=0.1s", "--unit time=s"]],
  ] as const)("whole numbers without a unit ask when seconds cannot be: %s", (what, cell, _, options) => {
    const capacityMah = what.startsWith("tenths") ? 1500 : 600;
    const question = questionOf(timed("Time", cell), { capacityMah });
    expect(question.code).toBe("time-unit-unclear");
    expect(question.options).toEqual(options);
    expect(logOf(timed("Time", cell), { capacityMah, units: new Map([["time", "s"]]) }).rows).toBe(300);
    const tenths = logOf(timed("Time", cell), { capacityMah, units: new Map([["time", "0.1s"]]) });
    expect(tenths.timeS[299]).toBeCloseTo(cell(FLIGHT[299]!.s) / 10, 9);
  });

  it("whole seconds without a unit are read when the flight is a flight", () => {
    expect(logOf(timed("Time", (s) => Math.round(s * 5))).timeS[299]).toBe(299);
    expect(
      logOf(
        timed("Time", (s) => Math.floor(s)),
        { capacityMah: 5000 },
      ).timeS[299],
    ).toBe(59);
    expect(
      logOf(
        timed("time_s", (s) => Math.round(s * 50)),
        { capacityMah: 500 },
      ).timeS[299],
    ).toBe(2990);
  });

  it("a clock that counts down is said to run backward", () => {
    const question = questionOf(timed("time", (s) => 385 - s));
    expect(question).toMatchObject({ code: "time-backward", options: ["--rate 5"] });
    expect(question.text).toContain("runs backward, from 385 to 325.2");
  });
});
