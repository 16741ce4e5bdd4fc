import { describe, expect, it } from "vitest";
import { noticesOf, outcomeOf, questionOf } from "./support.ts";

/** A flight of 2 minutes at 5 Hz in which the motor turns for most of the time. */
function flight(header: string, cells: (amps: number, isRunning: boolean) => readonly (string | number)[]) {
  const rows = Array.from({ length: 600 }, (_, row) => {
    const isRunning = row > 50 && row < 550;
    return [row / 5, isRunning ? 23.4 : 25.2, ...cells(isRunning ? 40 + (row % 70) / 10 : 0.2, isRunning)];
  });
  return `${header}\n${rows.map((row) => row.join(",")).join("\n")}\n`;
}

const amps = (outcome: ReturnType<typeof outcomeOf>) =>
  outcome.state === "read" ? outcome.log.channels.get("current")?.[100] : undefined;

describe("amperes under a header of milliamperes", () => {
  const turning = flight("time_s,pack_v,Current (mA),RPM", (current, isRunning) => [
    Math.round(current),
    isRunning ? 6000 : 0,
  ]);
  const decimals = flight("time_s,pack_v,Current (mA)", (current) => [current.toFixed(1)]);
  const throttled = flight("time_s,pack_v,Current (mA),throttle %", (current, isRunning) => [
    Math.round(current),
    isRunning ? 80 : 0,
  ]);

  it.each([
    ["while the shaft turns", turning],
    ["while the throttle is open", throttled],
    ["with decimals", decimals],
  ])("%s are asked about by column and value, and either answer is obeyed", (_, text) => {
    const asked = questionOf(text);
    expect(asked).toMatchObject({
      code: "unit-unclear",
      options: ["--unit current=A", "--unit current=mA"],
    });
    expect(asked.text).toContain('"Current (mA)"');
    expect(asked.text).toMatch(/0\.04\d* A/);
    expect(amps(outcomeOf(text, { units: new Map([["current", "A"]]) }))).toBeGreaterThan(40);
    expect(amps(outcomeOf(text, { units: new Map([["current", "mA"]]) }))).toBeLessThan(0.05);
  });

  it.each([
    [
      "true milliamperes",
      flight("time_s,pack_v,Current (mA),RPM", (current) => [Math.round(1000 * current), 6000]),
    ],
    ["a bench without a motor", flight("time_s,pack_v,Current (mA)", (current) => [Math.round(8 * current)])],
    ["a sensor that shows nothing", flight("time_s,pack_v,Current (mA),RPM", () => [0, 6000])],
    ["so few that they are no amperes either", flight("time_s,pack_v,Current (mA),RPM", () => [1, 6000])],
    ["few amperes under a header of amperes", flight("time_s,pack_v,Current (A),RPM", () => [0.3, 6000])],
  ])("%s are not", (_, text) => {
    expect(noticesOf(outcomeOf(text)).map(({ code }) => code)).not.toContain("unit-unclear");
  });
});

describe("a file that is no log", () => {
  it.each([
    ["web page", "<!DOCTYPE html>\n<html><body><table><tr><td>1</td></tr></table></body></html>\n"],
    ["web page", "\n  <html lang='en'>\n<p>1,2,3\n"],
    ["web page", "<table>\n<tr><td>0</td><td>25</td></tr>\n"],
    ["XML", '<?xml version="1.0"?>\n<gpx><trkpt lat="1" lon="2"/></gpx>\n'],
    ["JSON", '{\n "name": "A",\n "pack": { "cells": 6 }\n}\n'],
    ["JSON", '{"format":"x","values":[1,2,3]}\n'],
    ["JSON", "[\n [0, 25.1, 40],\n [1, 25.0, 41]\n]\n"],
    ["JSON", "[{\n"],
    ["text", "# Tool\n\nThis is a manual, with text.\n\n- one\n- two\n"],
  ])("%s is named, with what to do", (kind, text) => {
    const outcome = outcomeOf(text);
    expect(outcome.state).toBe("refusal");
    const [notice] = noticesOf(outcome);
    expect(notice?.text).toContain(kind);
    expect(notice?.text).toContain("CSV");
  });

  it.each([
    ["sections in brackets", "[Header]\nlogger,7\n[Data]\ntime_s,pack_v,current_a\n"],
    ["a smaller sign", "<time_s>,<pack_v>,<current_a>\n"],
    ["braces", "{time_s},{pack_v},{current_a}\n"],
    ["a line about its device", '{"device":"X1","fw":"2.1"}\ntime_s,pack_v,current_a\n'],
    ["names in a list", '["time_s","pack_v","current_a"]\ntime_s,pack_v,current_a\n'],
  ])("a log with %s in its head is one", (_, head) => {
    expect(outcomeOf(`${head}${"0,25,1\n1,25,2\n2,24,3\n".repeat(5)}`).state).toBe("read");
  });
});

describe("a clock of two parts", () => {
  const clocked = (first: number, step: number, rows: number, after = "") =>
    outcomeOf(
      `time,pack_v,current_a\n${Array.from({ length: rows }, (_, row) => {
        const at = first + step * row;
        return `${Math.floor(at / 60)}:${String(Math.floor(at) % 60).padStart(2, "0")}${after},25.1,${row % 9}`;
      }).join("\n")}\n`,
    );
  const doubts = (outcome: ReturnType<typeof outcomeOf>) =>
    noticesOf(outcome).filter(({ code }) => code === "time-unit-unclear");

  it("that gives a log of seconds is asked about, both rates offered", () => {
    const asked = clocked(605, 1, 12);
    expect(asked.state).toBe("question");
    expect(doubts(asked)[0]?.options).toEqual(["--rate 0.0166667", "--rate 1"]);
    expect(doubts(clocked(605, 2, 12))[0]?.options).toEqual(["--rate 0.00833333", "--rate 0.5"]);
  });

  it("that gives a log of minutes is read so, with a word about hours", () => {
    const read = clocked(605, 1, 300);
    expect(read.state).toBe("read");
    expect(doubts(read)).toMatchObject([{ severity: "note", options: ["--rate 0.0166667"] }]);
  });

  it.each([
    ["starts at 0 as a stopwatch does", clocked(0, 1, 300)],
    ["starts at 0 and is short", clocked(0, 1, 30)],
    ["passes the 24th hour", clocked(1400, 1, 300)],
    ["has fractions of a second", clocked(605, 1, 300, ".0")],
    ["stays for several rows", clocked(605, 0.25, 1200)],
  ])("that %s is minutes and seconds without a word", (_, outcome) => {
    expect(outcome.state).toBe("read");
    expect(doubts(outcome)).toEqual([]);
  });
});
