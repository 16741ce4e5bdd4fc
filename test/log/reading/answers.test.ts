import { describe, expect, it } from "vitest";
import {
  describeColumns,
  NO_READING_OPTIONS,
  type RememberedReading,
  readLog,
} from "../../../src/log/reading/index.ts";
import { headerOf, logOf, logText, outcomeOf } from "./support.ts";

const TEXT = logText("time_s,v,a,temp 1,temp 2", (row) => [
  row.s,
  row.volts,
  row.amps,
  row.celsius,
  row.celsius + 15,
]);

function remembered(change: Partial<RememberedReading>): RememberedReading {
  const outcome = outcomeOf(TEXT);
  const headerSignature = outcome.state === "read" ? outcome.log.headerSignature : outcome.headerSignature!;
  return {
    headerSignature,
    columns: {},
    units: {},
    rateHz: null,
    decimalMark: null,
    dateOrder: null,
    ...change,
  };
}

function readWith(memory: RememberedReading, options = NO_READING_OPTIONS) {
  return readLog(new TextEncoder().encode(TEXT), options, [memory]);
}

describe("answers kept for a header", () => {
  it("apply to a log with the same header", () => {
    const outcome = readWith(remembered({ columns: { controllerTemperature: "temp 2" } }));
    expect(outcome.state === "read" && headerOf(outcome.log, "controllerTemperature")).toBe("temp 2");
  });

  it("yield to the answer given now", () => {
    const outcome = readWith(remembered({ columns: { controllerTemperature: "temp 2" } }), {
      ...NO_READING_OPTIONS,
      columns: new Map([["controllerTemperature", "temp 1"]]),
    });
    expect(outcome.state === "read" && headerOf(outcome.log, "controllerTemperature")).toBe("temp 1");
  });

  it("do not apply to another header", () => {
    expect(
      readWith({ ...remembered({ columns: { controllerTemperature: "temp 2" } }), headerSignature: "x" })
        .state,
    ).toBe("question");
  });

  it("the signature is that of the header alone", () => {
    const signature = (text: string) =>
      logOf(text, { columns: new Map([["controllerTemperature", "#4"]]) }).headerSignature;
    const other = TEXT.split("\n").slice(0, 40).join("\n");
    expect(signature(`${other}\n`)).toBe(signature(TEXT));
    expect(signature(TEXT.replaceAll(",", ";"))).toBe(signature(TEXT));
    expect(signature(TEXT.replace("temp 2", "temp 3"))).not.toBe(signature(TEXT));
  });

  it("the columns of a log that asks are described too", () => {
    const description = describeColumns(outcomeOf(TEXT));
    expect(description).toMatchObject({
      format: "tallywatt/columns",
      version: 1,
      dialect: { delimiter: "," },
    });
    expect(description.columns.map((column) => column.channel)).toEqual([
      "time",
      "packVoltage",
      "current",
      null,
      null,
    ]);
    expect(JSON.parse(JSON.stringify(description))).toEqual(description);
  });
});
