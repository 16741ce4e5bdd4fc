import { describe, expect, it } from "vitest";
import { packDate } from "../../../src/log/reading/clockText.ts";
import { dayOfCode, findDateOrder } from "../../../src/log/reading/dateOrder.ts";
import { joinCells, joinPattern } from "../../../src/log/reading/joinedCells.ts";
import { writtenClock } from "../../../src/log/reading/writtenClock.ts";
import { codesOf, FLIGHT, type FlightRow, logOf, logText, noticesOf, outcomeOf } from "./support.ts";

/** A log with one more column: what became of it. */
function columnOf(header: string, value: (each: FlightRow, row: number) => string | number) {
  const outcome = outcomeOf(
    logText(`time_s,pack_v,current_a,${header}`, (each) => [
      each.s,
      each.volts,
      each.amps,
      value(each, Math.round(each.s * 5)),
    ]),
  );
  const columns = outcome.state === "read" ? outcome.log.columns : outcome.columns;
  return { outcome, column: columns[3]!, codes: codesOf(outcome) };
}

describe("one more column", () => {
  it.each([
    ["throttle", (row: number) => 0.01 * (row % 100), "throttle", "0-1"],
    ["throttle", (row: number) => 1000 + (row % 900), "throttle", "us"],
    ["throttle", (row: number) => row % 100, "throttle", "%"],
    ["throttle %", (row: number) => row % 100, "throttle", "%"],
    ["consumed", (row: number) => 0.013 * row + 0.001, "chargeCounter", "Ah"],
    ["consumed", (row: number) => 13 * row, "chargeCounter", "mAh"],
    ["ESC temp", (row: number) => 290 + row / 10, "controllerTemperature", "K"],
    ["ESC temp", (row: number) => 20 + row / 10, "controllerTemperature", "degC"],
    ["GPS speed", (row: number) => row % 30, "groundSpeed", null],
    ["airspeed", (row: number) => row % 30, "airspeed", null],
    ["speed (m/s)", (row: number) => row % 30, "groundSpeed", "m/s"],
    ["speed", (row: number) => 5000 + row, "shaftSpeed", "rev/min"],
    ["consumed mAh", (row: number) => 400 - row, null, null],
    ["speed", (row: number) => row % 30, null, null],
  ])("%s", (header, value, channel, unit) => {
    const { column } = columnOf(header, (_, row) => value(row));
    expect(column.channel).toBe(channel);
    if (unit !== null) expect(column.unit).toBe(unit);
    expect(column.why).not.toBe("");
  });

  it.each([
    ["throttle", (row: number) => 3000 + 40 * row],
    ["ESC temp", (row: number) => 60 + (row % 100)],
  ])("%s whose values fit no unit is a question with the units to choose from", (header, value) => {
    const { outcome } = columnOf(header, (_, row) => value(row));
    const doubt = noticesOf(outcome).find((notice) => notice.code === "unit-unclear");
    if (outcome.state === "read") expect(outcome.log.channels.has("throttle")).toBe(false);
    else expect(doubt?.options?.length).toBeGreaterThan(1);
  });
});

describe("cells", () => {
  const cells = (dead: readonly number[], more = "") =>
    outcomeOf(
      logText(`time_s,current_a${more === "" ? "" : ",pack_v"},cell 1 (V),cell 2 (V),cell 3 (V)`, (each) => [
        each.s,
        each.amps,
        ...(more === "" ? [] : [each.volts / 4]),
        ...[1, 2, 3].map((cell) => (dead.includes(cell) ? 0 : (each.volts / 8 + cell / 100).toFixed(3))),
      ]),
    );

  it("that show 0 in every row are asked about, both counts offered", () => {
    const last = noticesOf(cells([3])).find((notice) => notice.code === "cell-columns-dead");
    expect(last?.options).toEqual(["--cells 2", "--cells 3"]);
    const middle = noticesOf(cells([2])).find((notice) => notice.code === "cell-columns-dead");
    expect(middle?.options).toEqual(["--cells 3", "--cells 2"]);
  });

  it("are no question where the pack's volts count them", () => {
    expect(codesOf(cells([3], "pack"))).not.toContain("cell-columns-dead");
  });

  it("without a number count for nothing beside numbered ones", () => {
    const log = logOf(
      logText("time_s,current_a,lowest cell (V),cell 1 (V),cell 2 (V)", ({ s, amps, volts }) => [
        s,
        amps,
        (volts / 8).toFixed(3),
        (volts / 8).toFixed(3),
        (volts / 8 + 0.01).toFixed(3),
      ]),
    );
    expect(log.columns[2]?.channel).toBeNull();
    expect(log.channels.has("packVoltage")).toBe(true);
  });
});

describe("answers", () => {
  const plain = logText("time_s,Pack,pack,current_a", ({ s, volts, amps }) => [s, volts, volts, amps]);
  const asked = (options: Parameters<typeof outcomeOf>[1]) => noticesOf(outcomeOf(plain, options));

  it("find a header by its exact letters first, then by any", () => {
    const log = logOf(plain, { columns: new Map([["packVoltage", "pack"]]) });
    expect(log.columns[2]?.channel).toBe("packVoltage");
    const twice = asked({ columns: new Map([["packVoltage", "PACK"]]) });
    expect(twice).toMatchObject([{ code: "header-twice", options: expect.arrayContaining([expect.stringContaining("#2")]) }]); // biome-ignore format: one case
  });

  it.each([
    [{ columns: new Map([["packVolt", "pack"]]) }, "unknown-channel"],
    [{ units: new Map([["packVolt", "mV"]]) }, "unknown-channel"],
    [{ columns: new Map([["packVoltage", "#9"]]) }, "unknown-header"],
    [{ columns: new Map([["packVoltage", "#0"]]) }, "unknown-header"],
    [{ units: new Map([["packVoltage", "furlong"]]) }, "unknown-unit"],
    [{ rateHz: -1 }, "bad-rate"],
    [{ rateHz: Number.NaN }, "bad-rate"],
  ])("%j is a question", (options, code) => {
    expect(asked(options as never).map((notice) => notice.code)).toContain(code);
  });
});

describe("dates", () => {
  const codes = (...dates: readonly (readonly [number, number, number])[]) =>
    Float64Array.from(dates, ([a, b, c]) => packDate(a, b, c));

  it.each([
    [codes([2026, 5, 1]), "2026-05-01", "ymd", true],
    [codes([31, 5, 2026]), "31/05/2026", "dmy", true],
    [codes([5, 31, 2026]), "05/31/2026", "mdy", true],
    [codes([3, 4, 2026]), "03/04/2026", "dmy", false],
    [codes([4, 4, 2026]), "04/04/2026", "dmy", true],
    [codes([3, 4, 2026]), "3.4.2026", "dmy", true],
    [codes([3, 4, 2026], [4, 4, 2026]), "03/04/2026", "dmy", true],
    [codes([3, 4, 2026], [3, 5, 2026]), "03/04/2026", "mdy", true],
  ] as const)("%j, written %s, are %s", (packed, pattern, order, isProven) => {
    expect(findDateOrder(packed, null, pattern)).toEqual({ order, isProven });
  });

  it("that are no day are missing", () => {
    expect(dayOfCode(packDate(31, 2, 2026), "dmy")).toBeNaN();
    expect(dayOfCode(Number.NaN, "dmy")).toBeNaN();
    expect(dayOfCode(packDate(1, 1, 70), "dmy")).toBe(dayOfCode(packDate(2070, 1, 1), "ymd"));
  });

  it.each([
    ["2026-05-01T10:00:00.5+02:00", 7200, packDate(2026, 5, 1), 36_000.5, "2026-05-01T12:00:00.5+02:00"],
    ["1.5.2026 9:05", Number.NaN, packDate(2, 5, 2026), 600, "2.5.2026 10:00"],
    ["10:00:00 PM", Number.NaN, Number.NaN, 3600, "01:00:00 AM"],
    ["9:00:00 a.m.", Number.NaN, Number.NaN, 46_800, "1:00:00 p.m."],
    ["2026-05-01", Number.NaN, packDate(2026, 5, 2), 0, "2026-05-02"],
    ["1 May 2026 10:00:00", Number.NaN, packDate(2026, 5, 3), 36_000, "2026-05-03 10:00:00"],
    ["23:59:59", -3600, Number.NaN, 0, "23:00:00"],
  ])("and clocks are shown as %s is written", (pattern, offsetS, code, seconds, expected) => {
    expect(writtenClock(pattern, offsetS, code, seconds)).toBe(expected);
  });
});

describe("a clock that a spreadsheet left without seconds", () => {
  const two = (value: number) => String(value).padStart(2, "0");
  const minutesOnly = (prefix: string, rowsASecond: number) =>
    outcomeOf(
      logText("timestamp,pack_v,current_a", ({ s, volts, amps }) => {
        const minute = Math.floor((5 * s) / rowsASecond / 60);
        return [`${prefix}${10 + Math.floor(minute / 60)}:${two(minute % 60)}`, volts, amps];
      }),
    );

  it.each([
    ["2026-05-01 ", 1],
    ["1.5.2026 ", 1],
    ["01/05/2026 ", 0.2],
    ["", 1],
    ["", 2],
  ])("%j with %d rows a second is a question, never sixty times too short", (prefix, rowsASecond) => {
    const outcome = minutesOnly(prefix, rowsASecond);
    expect(outcome.state).toBe("question");
    const asked = noticesOf(outcome).find((notice) => notice.code === "time-unit-unclear");
    expect(asked?.options?.[0]).toMatch(/^--rate \d/);
  });

  it("stays minutes and seconds where the rows say so", () => {
    const log = logOf(
      logText("time,pack_v,current_a", ({ s, volts, amps }) => [
        `${Math.floor(s / 60)}:${two(Math.floor(s) % 60)}`,
        volts,
        amps,
      ]),
    );
    expect(log.timeS.at(-1)).toBe(59);
  });
});

describe("torn numbers", () => {
  const rows = FLIGHT.slice(0, 40).map(({ s, volts, amps }) =>
    [s.toFixed(1), volts.toFixed(2), amps.toFixed(1)].flatMap((text) => text.split(".")),
  );

  it("are joined where every column runs smoothest", () => {
    expect(joinPattern(rows, 3)).toEqual([true, true, true]);
    expect(joinCells(["1", "2", "33", "05", "4", "0"], [true, true, true])).toEqual(["1,2", "33,05", "4,0"]);
    expect(joinCells(["1", "2", "3"], [true, false])).toEqual(["1,2", "3"]);
  });

  it("stay as they are where no pattern fits", () => {
    expect(joinPattern(rows, 6)).toBeNull();
    expect(joinPattern(rows, 2)).toBeNull();
    expect(joinPattern([], 3)).toBeNull();
    expect(
      joinPattern(
        rows.map((row) => row.map((cell) => `${cell}x`)),
        3,
      ),
    ).toBeNull();
    expect(joinCells(["1", "2"], [true, true])).toEqual(["1", "2"]);
  });
});
