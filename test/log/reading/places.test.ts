import { describe, expect, it } from "vitest";
import type { ChannelName } from "../../../src/base/channels/index.ts";
import { codesOf, type FlightRow, logOf, logText, noticesOf, outcomeOf, questionOf } from "./support.ts";

type Value = (row: FlightRow, at: number) => number | string;

/** A flight with time, volts and amps, and more columns by header. */
function withColumns(more: Readonly<Record<string, Value>>, head = "time_s,pack_v,current_a") {
  const values = Object.values(more);
  return logText([head, ...Object.keys(more)].join(","), (row) => [
    row.s,
    row.volts,
    row.amps,
    ...values.map((value) => value(row, Math.round(row.s * 5))),
  ]);
}

const ofColumn = (header: string, value: Value) => logOf(withColumns({ [header]: value })).columns[3]!;
const volts = (row: FlightRow) => row.volts;
const celsius = (row: FlightRow) => row.celsius;

describe("a header that says where", () => {
  it.each<[string, Value, ChannelName | null]>([
    ["phase voltage", () => 20.5, null],
    ["rx current", () => 0.7, null],
    ["rx temp", celsius, null],
    ["air temp", celsius, "ambientTemperature"],
    ["FET temp", celsius, "controllerTemperature"],
    ["capacitor temp", celsius, "controllerTemperature"],
    ["GPS altitude", (row) => row.s, "altitude"],
    ["baro altitude", (row) => row.s, "altitude"],
    ["track (m)", (row) => row.s, null],
    ["position z", (row) => row.s, "altitude"],
    ["ESC rpm", (row) => row.rpm, "shaftSpeed"],
    ["shaft rpm", (row) => row.rpm, "shaftSpeed"],
  ])("%s", (header, value, channel) => {
    const column = ofColumn(header, value);
    expect(column.channel, column.why).toBe(channel);
  });

  it.each<[string, string, ChannelName]>([
    ["motor voltage", "rx voltage", "packVoltage"],
    ["ESC voltage", "motor voltage", "packVoltage"],
    ["pack voltage", "ESC voltage", "packVoltage"],
  ])("%s before %s", (better, worse, channel) => {
    const log = logOf(
      logText(`time_s,current_a,${worse},${better}`, (row) => [row.s, row.amps, row.volts - 0.5, row.volts]),
    );
    expect(log.columns[3]?.channel).toBe(channel);
    expect(log.columns[2]?.channel).toBeNull();
    expect(log.channels.get(channel)?.[0]).toBe(33.2);
  });

  it("takes the power stage before other parts of the board", () => {
    const log = logOf(withColumns({ "board temp": celsius, "FET temp": (row) => row.celsius + 9 }));
    expect(log.columns.map(({ channel }) => channel).slice(3)).toEqual([null, "controllerTemperature"]);
  });
});

describe("cells by their headers", () => {
  const cellLog = (headers: readonly string[], value: (row: FlightRow, cell: number) => number) =>
    outcomeOf(
      logText(`time_s,current_a,${headers.join(",")}`, (row) => [
        row.s,
        row.amps,
        ...headers.map((_, cell) => value(row, cell).toFixed(4)),
      ]),
    );
  const channelsOf = (outcome: ReturnType<typeof outcomeOf>) =>
    outcome.state === "read" ? outcome.log.columns.map(({ channel }) => channel).slice(2) : outcome.state;
  const cell = (row: FlightRow) => row.volts / 8;

  it("count from 0 or from 1, as words or letters", () => {
    const two = ["cellVoltage1", "cellVoltage2"];
    expect(channelsOf(cellLog(["cell 1", "cell 2"], cell))).toEqual(two);
    expect(channelsOf(cellLog(["Zelle 0 (V)", "Zelle 1 (V)"], cell))).toEqual(two);
    expect(channelsOf(cellLog(["C1 (V)", "C2 (V)"], cell))).toEqual(two);
    expect(channelsOf(cellLog(["C1 (mV)", "C2 (mV)"], (row) => 1000 * cell(row)))).toEqual(two);
  });

  it("beyond the cells of any pack are none, with a word why", () => {
    const outcome = cellLog(["cell 1 (V)", "cell 2 (V)", "cell 99 (V)"], cell);
    if (outcome.state !== "read") throw new Error(outcome.state);
    expect(outcome.log.columns[4]).toMatchObject({ channel: null, why: expect.stringContaining("99") });
  });

  it("of letters alone are none where the values are no cell's", () => {
    const outcome = outcomeOf(
      withColumns({ C1: (_, row) => 20 + (row % 9), C2: (_, row) => 30 + (row % 9) }),
    );
    if (outcome.state !== "read") throw new Error(outcome.state);
    expect(outcome.log.columns.map(({ channel }) => channel).slice(3)).toEqual([null, null]);
  });

  it("without a number stand for the pack: times the cells, in volts or millivolts", () => {
    for (const [header, factor] of [
      ["cell (V)", 1],
      ["cell voltage", 1],
      ["cell voltage", 1000],
    ] as const) {
      const text = logText(`time_s,current_a,${header}`, (row) => [
        row.s,
        row.amps,
        (factor * cell(row)).toFixed(4),
      ]);
      const log = logOf(text, { cells: 8 });
      for (const [row, packV] of [
        [0, 33.2],
        [299, 33.2 - 299 / 250],
      ] as const)
        expect(log.channels.get("packVoltage")?.[row], `${header} x ${factor}`).toBeCloseTo(packV, 1);
    }
  });

  it("without a number whose values are no cell's volts are none", () => {
    const outcome = cellLog(["cell voltage"], (row) => 10 * cell(row));
    expect(channelsOf(outcome)).not.toContain("packVoltage");
  });

  it("of which one shows only zeros are counted by the pack's volts, from the first row that has both", () => {
    const log = (packV: Value) =>
      outcomeOf(
        logText("time_s,current_a,pack_v,cell 1 (V),cell 2 (V),cell 3 (V)", (row) => {
          const at = Math.round(row.s * 5);
          return [row.s, row.amps, packV(row, at), cell(row).toFixed(3), cell(row).toFixed(3), 0];
        }),
      );
    const late: Value = (row, at) => (at < 4 ? "" : (2 * cell(row)).toFixed(3));
    expect(codesOf(log(late))).not.toContain("cell-columns-dead");
    expect(codesOf(log((row) => (3 * cell(row)).toFixed(3)))).toContain("cell-columns-dead");
    expect(codesOf(log(() => ""))).toContain("cell-columns-dead");
  });
});

describe("units by the values", () => {
  const packText = (factor: number, header = "pack") =>
    logText(`time_s,current_a,${header} voltage`, (row) => [
      row.s,
      row.amps,
      (factor * row.volts).toFixed(3),
    ]);

  it.each([
    [1, 33.2],
    [10, 33.2],
    [1000, 33.2],
  ])("pack volts times %d without a unit are volts when the cells say so", (factor, first) => {
    const log = logOf(packText(factor), { cells: 8 });
    expect(log.channels.get("packVoltage")?.[0]).toBeCloseTo(first, 6);
  });

  it("that no count of cells explains are a question, the counts that fit offered", () => {
    const asked = questionOf(packText(1), { cells: 20 });
    expect(asked.options).toContain("--cells 8");
    expect(asked.options?.every((option) => option.startsWith("--cells "))).toBe(true);
  });

  it("cells without a unit are volts or millivolts", () => {
    for (const factor of [1, 1000]) {
      const text = logText("time_s,current_a,cell 1,cell 2", (row) => [
        row.s,
        row.amps,
        ((factor * row.volts) / 8).toFixed(4),
        ((factor * row.volts) / 8).toFixed(4),
      ]);
      const log = logOf(text);
      expect(log.channels.get("cellVoltage1")?.[0], String(factor)).toBeCloseTo(33.2 / 8, 3);
    }
  });

  it("heights and speeds without a unit are metres and metres a second", () => {
    const log = logOf(withColumns({ altitude: (row) => 9000 + 10 * row.s, "ground speed": () => 300.5 }));
    expect(log.channels.get("altitude")?.[0]).toBe(9000);
    expect(log.columns.slice(3).map(({ unit }) => unit)).toEqual(["m", "m/s"]);
  });
});

describe("two columns of one kind", () => {
  it("are one sensor when they agree, a question when they do not", () => {
    const beside = (more: number) =>
      outcomeOf(withColumns({ "ESC temp": celsius, "ESC temperature": (row) => row.celsius + more }));
    expect(beside(0).state).toBe("read");
    expect(beside(12).state).toBe("question");
    const rivals = noticesOf(beside(12)).find(({ severity }) => severity === "question");
    expect(rivals?.options).toEqual([
      "--column controllerTemperature=#4",
      "--column controllerTemperature=#5",
    ]);
  });

  it("the one that is named for the electrical turns is used only divided by the pole pairs", () => {
    const text = logText("time_s,pack_v,current_a,eRPM", (row) => [row.s, row.volts, row.amps, 7 * row.rpm]);
    expect(logOf(text).channels.has("shaftSpeed")).toBe(false);
    const named = logOf(text, { columns: new Map([["shaftSpeed", "eRPM"]]), polePairs: 7 });
    expect(named.channels.get("shaftSpeed")?.[60]).toBeCloseTo(7000, 6);
  });

  it("lone cell volts are left when the pack is told by numbered cells", () => {
    const text = (more: string) =>
      logText(`time_s,current_a,cell voltage,cell 1 (V),cell 2 (V)${more}`, (row) => [
        row.s,
        row.amps,
        ...[8, 8, 8].map((by) => (row.volts / by).toFixed(3)),
        ...(more === "" ? [] : [(row.volts / 4).toFixed(3)]),
      ]);
    for (const more of ["", ",pack_v"]) {
      const log = logOf(text(more));
      expect(log.columns[2]?.channel, more).toBeNull();
      expect(log.channels.get("packVoltage")?.[0], more).toBeCloseTo(8.3, 2);
    }
  });
});

describe("power in place of current", () => {
  const powerLog = (watts: Value, packV: Value = volts) =>
    outcomeOf(
      logText("time_s,pack_v,power (W)", (row) => [
        row.s,
        packV(row, Math.round(row.s * 5)),
        watts(row, Math.round(row.s * 5)),
      ]),
    );

  it("is divided by the volts where there are any, and missing where there are none", () => {
    const outcome = powerLog((row) => (row.volts * row.amps).toFixed(2), (row, at) => (at === 30 ? 0 : row.volts)); // biome-ignore format: one case
    if (outcome.state !== "read") throw new Error(outcome.state);
    const amps = outcome.log.channels.get("current");
    expect(amps?.[40]).toBeCloseTo(60.4 + Math.sin(40), 0);
    expect(amps?.[30]).toBeNaN();
  });

  it.each([
    ["too small for a drive", (row: FlightRow) => row.amps / 100],
    ["too large for any model", (row: FlightRow) => 1e6 * row.amps],
  ])("is no current when %s", (_, watts) => {
    const outcome = powerLog(watts);
    if (outcome.state !== "read") throw new Error(outcome.state);
    expect(outcome.log.channels.has("current")).toBe(false);
  });
});
