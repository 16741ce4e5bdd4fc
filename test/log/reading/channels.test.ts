import { describe, expect, it } from "vitest";
import type { ChannelName } from "../../../src/base/channels/index.ts";
import { codesOf, FLIGHT, headerOf, logOf, logText, noticesOf, outcomeOf, questionOf } from "./support.ts";

const NO_UNIT = new Map<ChannelName, string>();

/** Header, how its cell is written from volts, amps, rev/min or degrees, and what it must become. */
const HEADERS: readonly (readonly [ChannelName, string, (value: number) => number])[] = [
  ...[
    "Voltage (V)",
    "U",
    "V",
    "Volts",
    "pack_v",
    "Pack voltage",
    "Battery V",
    "vbat",
    "UBatt [V]",
    "batteryvoltage",
    "Akkuspannung [V]",
    "Spannung",
    "Tension (V)",
    "Voltaje",
    "Battery",
    "ESC voltage",
  ].map((header) => ["packVoltage", header, (value: number) => value] as const),
  ...["pack_mv", "battery_mV", "Voltage [mV]", "packVoltageMv", "voltage"].map(
    (header) => ["packVoltage", header, (value: number) => value * 1000] as const,
  ),
  ["packVoltage", "pack_cV", (value) => value * 100],
  ...[
    "Current (A)",
    "I",
    "A",
    "Amps",
    "current_a",
    "I_batt",
    "Strom [A]",
    "Courant (A)",
    "Corriente",
    "Akkustrom",
    "Battery current in A",
    "amperage",
  ].map((header) => ["current", header, (value: number) => value] as const),
  ...["current_ma", "Current [mA]", "packCurrentMa"].map(
    (header) => ["current", header, (value: number) => value * 1000] as const,
  ),
  ["current", "current_cA", (value) => value * 100],
  ...[
    "RPM",
    "rpm",
    "n [1/min]",
    "Motor speed",
    "Speed (rev/min)",
    "Drehzahl",
    "motor_rpm",
    "Propeller rev/min",
    "prop speed rpm",
    "u/min",
    "Régime (tr/min)",
    "shaftspeed",
  ].map((header) => ["shaftSpeed", header, (value: number) => value] as const),
  ["shaftSpeed", "Motor (Hz)", (value) => value / 60],
  ...[
    "esc_temp_c",
    "Controller temperature (degC)",
    "T ESC",
    "Reglertemperatur [°C]",
    "ESC °C",
    "esctemp",
    "FET temp C",
    "Temp",
    "Temperature A",
  ].map((header) => ["controllerTemperature", header, (value: number) => value] as const),
  ...["ESC temp (F)", "Controller °F", "ESC_TEMP_F"].map(
    (header) => ["controllerTemperature", header, (value: number) => value * 1.8 + 32] as const,
  ),
  ...["ESC temp (K)", "controller_temp"].map(
    (header) => ["controllerTemperature", header, (value: number) => value + 273.15] as const,
  ),
  ["motorTemperature", "Motor temp C", (value) => value],
  ["motorTemperature", "Motortemperatur", (value) => value],
  ["packTemperature", "Battery °C", (value) => value],
  ["ambientTemperature", "Outside temp (C)", (value) => value],
];

const SOURCE: Readonly<Record<string, (row: (typeof FLIGHT)[number]) => number>> = {
  packVoltage: (row) => row.volts,
  current: (row) => row.amps,
  shaftSpeed: (row) => row.rpm,
};

describe("channels from header and values", () => {
  it.each(HEADERS)("%s from %j", (channel, header, write) => {
    const of = SOURCE[channel] ?? ((row: (typeof FLIGHT)[number]) => row.celsius);
    const others = channel === "current" ? ["pack_v"] : ["current_a"];
    const other = (row: (typeof FLIGHT)[number]) => (channel === "current" ? row.volts : row.amps);
    const cell = (row: (typeof FLIGHT)[number]) => Number(write(of(row)).toFixed(4));
    const log = logOf(logText(`time_s;${header};${others[0]}`, (row) => [row.s, cell(row), other(row)], ";"));
    const column = log.columns[1]!;
    expect(column.channel, column.why).toBe(channel);
    const read = log.channels.get(channel)!;
    for (const [index, row] of FLIGHT.entries()) expect(read[index]).toBeCloseTo(of(row), 1);
  });

  it.each([
    ["Receiver volts", "5.1"],
    ["rx_v", "5.1"],
    ["BEC voltage (V)", "6"],
    ["RSSI", "-60"],
    ["GPS lat", "47.1"],
    ["target_rpm", "7000"],
    ["current_limit_a", "100"],
    ["max_current_a", "60"],
    ["wind_speed", "3"],
    ["velocity_x", "3"],
    ["power_w", "900"],
    ["remaining_pct", "40"],
    ["Vertical speed (m/s)", "1"],
    ["phase current", "80"],
    ["__proto__", "1"],
    ["", "1"],
    ["Event", "x"],
  ])("%j stays unmapped with a reason", (header, cell) => {
    const log = logOf(
      logText(`time_s,pack_v,${header},current_a,rpm`, (row) => [row.s, row.volts, cell, row.amps, row.rpm]),
    );
    expect(log.columns[2]).toMatchObject({ channel: null, unit: null });
    expect(log.columns[2]!.why).not.toBe("");
    expect([...log.channels.keys()].sort()).toEqual(["current", "packVoltage", "shaftSpeed"]);
  });

  it("dead columns lose to live ones", () => {
    const text = logText("time_s,Volt 1,Volt 2,Amp 1,Amp 2,RPM 1,RPM 2", (row) => [
      row.s,
      0,
      row.volts,
      row.amps,
      "",
      0,
      row.rpm,
    ]);
    const log = logOf(text);
    expect(
      ["packVoltage", "current", "shaftSpeed"].map((channel) => headerOf(log, channel as ChannelName)),
    ).toEqual(["Volt 2", "Amp 1", "RPM 2"]);
  });

  it("an all-zero current stays the current, so that it can be seen to be dead", () => {
    expect(
      logOf(logText("time_s,v,a,rpm", (row) => [row.s, row.volts, "0.0", row.rpm])).channels.has("current"),
    ).toBe(true);
  });

  it("pack current and shaft speed win over motor current and electrical speed", () => {
    const log = logOf(
      logText("time_s,v,motor_a,batt_a,erpm,rpm", (row) => [
        row.s,
        row.volts,
        row.amps * 1.2,
        row.amps,
        row.rpm * 7,
        row.rpm,
      ]),
    );
    expect(headerOf(log, "current")).toBe("batt_a");
    expect(headerOf(log, "shaftSpeed")).toBe("rpm");
  });

  it("electrical speed alone waits for the pole pairs", () => {
    const text = logText("time_s,v,a,erpm", (row) => [row.s, row.volts, row.amps, row.rpm * 7]);
    const waiting = outcomeOf(text);
    expect(noticesOf(waiting)).toMatchObject([
      { code: "pole-pairs-needed", severity: "warning", options: ["--pole-pairs 7"] },
    ]);
    expect([...logOf(text, { polePairs: 7 }).channels.get("shaftSpeed")!]).toEqual(
      FLIGHT.map((row) => row.rpm),
    );
  });

  it("columns that cannot be told apart are asked about, and the option settles it", () => {
    const text = logText("time_s,v,a,temp 1,temp 2", (row) => [
      row.s,
      row.volts,
      row.amps,
      row.celsius,
      row.celsius + 15,
    ]);
    const question = questionOf(text);
    expect(question.options).toEqual([
      "--column controllerTemperature=#4",
      "--column controllerTemperature=#5",
    ]);
    const log = logOf(text, { columns: new Map([["controllerTemperature", "#5"]]) });
    expect(headerOf(log, "controllerTemperature")).toBe("temp 2");
  });

  it("a lone motor current is asked about", () => {
    const text = logText("time_s,v,motor current", (row) => [row.s, row.volts, row.amps]);
    expect(questionOf(text)).toMatchObject({ code: "motor-current-only", options: ["--column current=#3"] });
    expect(logOf(text, { columns: new Map([["current", "motor current"]]) }).channels.has("current")).toBe(
      true,
    );
  });

  it.each([
    ["pack_v", 1000, 1, "--unit packVoltage=mV"],
    ["pack_v", 100, 1, "--unit packVoltage=cV"],
    ["current_a", 1, 1000, "--unit current=mA"],
  ])("%s that cannot be in its unit asks for it", (_, voltsBy, ampsBy, option) => {
    const text = logText("time_s,pack_v,current_a", (row) => [row.s, row.volts * voltsBy, row.amps * ampsBy]);
    expect(questionOf(text).options).toContain(option);
  });

  it("volts that do not fit the cell count ask, and one cell's volts become the pack's", () => {
    const text = logText("time_s,volts,amps", (row) => [row.s, (row.volts / 8).toFixed(3), row.amps]);
    expect(questionOf(text, { cells: 8 }).code).toMatch(/^(unit|cells)-unclear$/);
    const log = logOf(text, { cells: 8, units: new Map([...NO_UNIT, ["packVoltage", "V/cell"]]) });
    expect(log.channels.get("packVoltage")![0]).toBeCloseTo(33.2, 1);
  });

  it("cells from 0 or 1 are numbered from 1, and their sum is the pack voltage", () => {
    for (const first of [0, 1]) {
      const header = `time_s,amps,${[0, 1, 2, 3].map((cell) => `Cell ${cell + first} (V)`).join(",")}`;
      const log = logOf(
        logText(header, (row) => [
          row.s,
          row.amps,
          ...[1, 2, 3, 4].map((cell) => (3.7 + cell / 100).toFixed(2)),
        ]),
      );
      expect(log.channels.get("cellVoltage4")![0]).toBe(3.74);
      expect(log.channels.get("packVoltage")![0]).toBeCloseTo(14.9, 9);
    }
  });

  it.each([
    ["throttle", 0.01],
    ["throttle_pct", 1],
    ["Gas [%]", 1],
  ])("throttle as %s", (header, factor) => {
    const log = logOf(
      logText(`time_s,v,a,${header}`, (row) => [row.s, row.volts, row.amps, (row.rpm / 70) * factor]),
    );
    expect(Math.max(...log.channels.get("throttle")!)).toBeCloseTo(100, 9);
  });

  it("an unknown header or unit asks with the nearest known one", () => {
    const text = logText("time_s,pack_v,current_a", (row) => [row.s, row.volts, row.amps]);
    expect(questionOf(text, { columns: new Map([["current", "curent_a"]]) })).toMatchObject({
      code: "unknown-header",
      options: ["--column current=#3"],
      text: expect.stringContaining('"current_a"'),
    });
    expect(questionOf(text, { columns: new Map([["current", "#9"]]) }).code).toBe("unknown-header");
    expect(questionOf(text, { units: new Map([["current", "mV"]]) })).toMatchObject({ code: "unknown-unit" });
    expect(questionOf(text, { columns: new Map([["curent" as ChannelName, "#3"]]) }).text).toContain(
      "current",
    );
    expect(questionOf(text, { rateHz: 0 }).code).toBe("bad-rate");
    expect(questionOf(text, { delimiter: ",," }).code).toBe("bad-delimiter");
  });

  it("a log without volts, amps or speed is refused with its headers", () => {
    const outcome = outcomeOf(logText("time_s,foo,bar", (row) => [row.s, row.volts, row.amps]));
    expect(outcome.state).toBe("refusal");
    expect(noticesOf(outcome)[0]).toMatchObject({
      code: "no-channel",
      text: expect.stringContaining('"foo"'),
    });
  });

  it("a log without current is read with a warning", () => {
    const outcome = outcomeOf(logText("time_s,volts,rpm", (row) => [row.s, row.volts, row.rpm]));
    expect(outcome.state).toBe("read");
    expect(codesOf(outcome)).toEqual(["channel-not-found"]);
  });

  it("a cell count that the volts deny asks for the count, not for the unit", () => {
    const text = logText("time_s,Voltage(V),Current(A)", (row) => [row.s, row.volts, row.amps]);
    const question = questionOf(text, { cells: 5 });
    expect(question).toMatchObject({ code: "cells-unclear", options: ["--cells 8", "--cells 9"] });
    expect(question.text).toContain("V over 5 cells is");
  });

  it("a unit against the header's own is obeyed with both numbers, and asked about when no sensor shows it", () => {
    const text = logText("time_s,Voltage(V),Current(A)", (row) => [row.s, row.volts, row.amps]);
    const milli = questionOf(text, { units: new Map([...NO_UNIT, ["current", "mA"]]) });
    expect(milli).toMatchObject({ code: "unit-contradicted", options: ["--unit current=A"] });
    expect(milli.text).toMatch(/names A, but mA was given.* 61\.\d A .* 0\.061\d A/);
    const deci = outcomeOf(text, { units: new Map([...NO_UNIT, ["current", "dA"]]) });
    const notice = noticesOf(deci).find(({ code }) => code === "unit-contradicted");
    expect(deci.state).toBe("read");
    expect(notice?.severity).toBe("warning");
    const time = outcomeOf(text, { units: new Map([...NO_UNIT, ["time", "min"]]) });
    expect(codesOf(time)).toContain("unit-contradicted");
  });

  it("one column of a cell's volts is never the pack's: the cells are asked for, and multiplied", () => {
    const text = logText("time_s,Cell voltage(V),Current(A)", (row) => [
      row.s,
      (row.volts / 8).toFixed(3),
      row.amps,
    ]);
    expect(questionOf(text)).toMatchObject({
      code: "cells-needed",
      options: ["--cells 6", "--cells 8", "--cells 12"],
    });
    const byName = { columns: new Map([["packVoltage", "Cell voltage(V)"]] as const) };
    expect(questionOf(text, byName).code).toBe("cells-needed");
    for (const options of [{ cells: 8 }, { ...byName, cells: 8 }]) {
      expect(logOf(text, options).channels.get("packVoltage")![0]).toBeCloseTo(FLIGHT[0]!.volts, 2);
      expect(codesOf(outcomeOf(text, options))).toContain("pack-from-cell");
    }
  });

  it("an option to try names a real column, rate or number, never a placeholder", () => {
    const logs = [
      logText("a,b,c", (row) => [row.s, row.volts, row.amps]),
      logText("time_s,b,Current(A)", (row) => [row.s, row.volts, row.amps]),
      logText("volts,amps", (row) => [row.volts, row.amps]),
      logText("time_s,erpm", (row) => [row.s, row.rpm * 7]),
      logText("time,volts,amps", (row) => [row.s, row.volts, row.amps])
        .split("\n")
        .slice(1)
        .join("\n"),
      logText("time,volts", (row) => [row.s, row.volts, row.amps]),
    ];
    for (const log of logs) {
      const options = noticesOf(outcomeOf(log)).flatMap((notice) => notice.options ?? []);
      expect(options.join(" ")).not.toMatch(/HEADER|UNIT|HZ|#N| N\b/);
    }
    expect(questionOf(logs[4]!).options).toEqual([
      "--column time=#1 --column packVoltage=#2 --column current=#3",
    ]);
    const unknown = questionOf(logs[0]!, { columns: new Map([["current", "Amps"]] as const) });
    expect(unknown.text).toBe('The log has no column "Amps". It has "a", "b", "c".');
  });
});
