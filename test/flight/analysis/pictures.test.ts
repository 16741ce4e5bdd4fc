import { describe, expect, it } from "vitest";
import { isKnown, type KnownQuantity, type Quantity } from "../../../src/base/quantity/index.ts";
import type { TimeCurve } from "../../../src/flight/analysis/index.ts";
import { checkedLog, TRUE_LOGS } from "../prediction/demoSeason.ts";

const logOf = (file: string) => TRUE_LOGS.find((log) => log.file === file)!;
const flown = checkedLog(logOf("flight-09.csv"));
const bench = checkedLog(logOf("bench-run.csv"));
const { pictures, measures } = flown.analysed[0]!;

function sure(quantity: Quantity): KnownQuantity {
  if (!isKnown(quantity)) throw new Error(quantity.why);
  return quantity;
}

const highest = ({ y }: TimeCurve) => y.reduce((most, value) => Math.max(most, value));

describe("pictures of the parts", () => {
  it("move the hot day's curve so that its top is the peak that is told", () => {
    const { measured, hotDay } = pictures.heat;
    expect(highest(measured!)).toBe(sure(measures.controllerPeakC).value);
    expect(highest(hotDay!)).toBeCloseTo(sure(measures.controllerHotDayPeakC).value, 9);
  });

  it("model the readings of a simulated controller to a degree or two", () => {
    const { measured, modelled } = pictures.heat;
    const errors = Array.from(modelled!.x).map((atS, k) => {
      const row = measured!.x.findIndex((other) => other >= atS);
      return row < 0 ? 0 : Math.abs(modelled!.y[k]! - measured!.y[row]!);
    });
    expect(Math.max(...errors)).toBeLessThan(4);
    expect(errors.reduce((sum, error) => sum + error, 0) / errors.length).toBeLessThan(1);
  });

  it("reach the limit sooner on the hot day, and settle hotter", () => {
    const { today, onHotDay, fullThrottleA, hotDayC, airC } = pictures.heat;
    expect(fullThrottleA).toBe(sure(measures.staticCurrentA).value);
    expect(sure(onHotDay.untilLimitS).value).toBeLessThan(sure(today.untilLimitS).value);
    const warmerC = hotDayC - sure(airC).value;
    expect(sure(onHotDay.settlesC).value - sure(today.settlesC).value).toBeCloseTo(warmerC, 9);
  });

  it.each([
    ["flight-09.csv", flown],
    ["bench-run.csv", bench],
  ] as const)("cross motor and propeller where the simulator's static point was: %s", (file, log) => {
    const { lines } = log.analysed[0]!.pictures.load;
    const { motor, propeller, meetsRpm, meetsA, propellerLow, propellerHigh } = lines!;
    const crossing = motor.currentA.findIndex((amps, k) => amps < propeller.currentA[k]!);
    const [before, after] = [propeller.speedRpm[crossing - 1]!, propeller.speedRpm[crossing]!];
    expect(sure(meetsRpm).value).toBeGreaterThan(before);
    expect(sure(meetsRpm).value).toBeLessThan(after);
    const truth = logOf(file).flights[0]!;
    expect(truth.staticRpm).toBeGreaterThan(sure(meetsRpm).low!);
    expect(truth.staticRpm).toBeLessThan(sure(meetsRpm).high!);
    expect(truth.staticCurrentA).toBeGreaterThan(sure(meetsA).low!);
    expect(truth.staticCurrentA).toBeLessThan(sure(meetsA).high!);
    propeller.currentA.forEach((amps, k) => {
      expect(propellerLow.currentA[k]).toBeLessThan(amps);
      expect(propellerHigh.currentA[k]).toBeGreaterThan(amps);
    });
  });

  it("turn the motor's power limit into the current that draws it from this pack", () => {
    const { lines } = pictures.load;
    const { powerLimitA, powerLimitW, motor } = lines!;
    // The motor's line ends where its back voltage is all the pack has at no load.
    const noLoad = motor.speedRpm[motor.currentA.findIndex((amps) => amps < 0)]!;
    const openV = noLoad / 230;
    const ohm = sure(measures.packResistance10sMohm).value / 1000;
    expect((openV - ohm * powerLimitA!) * powerLimitA!).toBeGreaterThan(0.95 * powerLimitW!);
    expect((openV - ohm * powerLimitA!) * powerLimitA!).toBeLessThan(1.05 * powerLimitW!);
  });

  it("tell what the pack gives up under a load by its resistance after ten seconds", () => {
    const { dropV, endCellV } = pictures.pack.under(55);
    const { value, low, high } = sure(measures.packResistance10sMohm);
    expect(sure(dropV).value).toBeCloseTo(0.055 * value, 9);
    expect(sure(dropV).high! - sure(dropV).low!).toBeCloseTo(0.055 * (high! - low!), 9);
    const noLoadV = pictures.pack.picture!.openCircuit.at(-1)![1];
    expect(sure(endCellV).value).toBeCloseTo((noLoadV - sure(dropV).value) / 8, 9);
  });

  it("stay small", () => {
    const { pack, heat, load } = pictures;
    expect(JSON.stringify(pack.picture).length).toBeLessThan(40_000);
    expect(heat.measured!.x.length).toBeLessThanOrEqual(360);
    expect(load.lines!.propeller.speedRpm.length).toBeLessThan(100);
  });

  it("say why there are none", () => {
    const { meanings, analysed } = bench;
    expect(analysed[0]!.pictures.load.inFlight.shareOfStatic.value).toBeNull();
    expect(meanings[0]!.load.length).toBeGreaterThan(0);
  });
});
