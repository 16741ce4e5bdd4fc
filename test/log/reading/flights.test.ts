import { readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { sharedFolder, withShared } from "../../support/shared.ts";
import { headerOf, logOf } from "./support.ts";

const folder = sharedFolder();
const flights = folder === null ? "" : resolve(folder, "flights");
const files = folder === null ? [] : readdirSync(flights).filter((file) => /^\d+\.csv$/.test(file));

// Rodrigues et al., In-flight positional and energy use data set, Scientific Data 2021, doi 10.1184/R1/12683453.
describe.skipIf(folder === null)(withShared("real recordings without units in the header"), () => {
  it("are eight", () => expect(files).toHaveLength(8));

  it.each(files)("%s is read with no option and no question", (file) => {
    const bytes = new Uint8Array(readFileSync(resolve(flights, file)));
    const log = logOf(bytes);
    expect(log.rows).toBe(new TextDecoder().decode(bytes).trim().split("\n").length - 1);
    expect(headerOf(log, "time")).toBe("time");
    expect(headerOf(log, "packVoltage")).toBe("battery_voltage");
    expect(headerOf(log, "current")).toBe("battery_current");
    const unmapped = log.columns.filter((column) => column.channel === null).map((column) => column.header);
    expect(unmapped).toEqual(
      expect.arrayContaining(["wind_speed", "wind_angle", "velocity_x", "velocity_z", "angular_z"]),
    );
    for (const column of log.columns) expect(column.why).not.toBe("");
    expect(log.notices).toEqual([]);
  });
});
