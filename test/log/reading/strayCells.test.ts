import { describe, expect, it } from "vitest";
import { FLIGHT, logOf, logText } from "./support.ts";

function clockOf(s: number): string {
  const second = Math.floor(s);
  return `10:00:${String(second).padStart(2, "0")}.${Math.round((s - second) * 10)}`;
}

const unreadable = (log: ReturnType<typeof logOf>) =>
  log.notices.filter((notice) => notice.code === "cells-unreadable");

describe("a cell of another kind than its column", () => {
  it("is no value: minutes among amps", () => {
    const log = logOf(
      logText("time_s,pack_v,current_a", ({ s, volts, amps }) => [s, volts, s === 8 ? "0:05" : amps]),
    );
    expect(log.channels.get("current")![40]).toBeNaN();
    expect(unreadable(log)).toMatchObject([{ lines: [42], count: 1 }]);
    expect(unreadable(log)[0]?.text).toContain('"0:05"');
  });

  it("is no value, each quoted as written where there are several", () => {
    const rows = logText("time_s,pack_v,current_a", ({ s, volts, amps }) => [
      s,
      s === 7 || s === 8 ? `24.8.8${s}` : volts,
      amps,
    ]);
    expect(unreadable(logOf(rows))).toMatchObject([{ lines: [37, 42], count: 2 }]);
    expect(unreadable(logOf(rows))[0]?.text).toContain('"24.8.87"');
  });

  it("is no time: a number among clocks", () => {
    const short = FLIGHT.slice(0, 200).map(({ s, volts, amps }) => [
      s === 8 ? "36" : clockOf(s),
      volts,
      amps,
    ]);
    const log = logOf(`time,pack_v,current_a\n${short.map((cells) => cells.join(",")).join("\n")}\n`);
    expect(log.timeS[40]).toBeNaN();
    expect(log.timeS[41]).toBeCloseTo(8.2, 9);
    expect(unreadable(log)).toMatchObject([{ lines: [42], count: 1 }]);
  });

  it("stays in a count that turns to minutes", () => {
    const text = (s: number) => (s < 50 ? String(s) : `0:${s.toFixed(1)}`);
    const log = logOf(logText("time,pack_v,current_a", ({ s, volts, amps }) => [text(s), volts, amps]));
    expect(log.timeS[299]).toBeCloseTo(59.8, 9);
    expect(unreadable(log)).toEqual([]);
  });

  it("is no value anywhere in a long log, also where columns have grown since the first", () => {
    const lines = Array.from({ length: 5000 }, (_, row) => {
      const volts = row === 500 || row === 4000 ? "0:22" : (25 - (row % 7) / 10).toFixed(1);
      return `${(row / 10).toFixed(1)},${volts},${10 + (row % 5)}`;
    });
    const log = logOf(`time_s,pack_v,current_a\n${lines.join("\n")}\n`);
    expect(log.channels.get("packVoltage")![4000]).toBeNaN();
    expect(unreadable(log)).toMatchObject([{ lines: [502, 4002], count: 2 }]);
    const clocks = Array.from({ length: 5000 }, (_, row) => {
      const minute = String(Math.floor(row / 600)).padStart(2, "0");
      const second = String(Math.floor(row / 10) % 60).padStart(2, "0");
      return `${row === 500 ? "50.0" : `10:${minute}:${second}.${row % 10}`},25,12`;
    });
    const timed = logOf(`time,pack_v,current_a\n${clocks.join("\n")}\n`);
    expect(timed.timeS.filter((s) => Number.isNaN(s))).toHaveLength(1);
  });
});
