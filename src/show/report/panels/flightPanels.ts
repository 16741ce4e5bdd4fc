import type { ChannelName } from "../../../base/channels/index.ts";
import { capital } from "../../../base/words/index.ts";
import {
  cellRangeOfRows,
  filledChannel,
  type MeasureName,
  meanCellOfRows,
  powerOfRows,
} from "../../../flight/analysis/index.ts";
import type { Panel, PanelSeries } from "../../charts/index.ts";
import type { FlightContext } from "../reportInput.ts";
import { apart, limitsOf, markOf, panelOf } from "./panelParts.ts";
import { traceOf } from "./traces.ts";

/** A panel and the measures that its sentence and its marks speak of. */
export interface FlightPanel {
  readonly panel: Panel;
  readonly highest: readonly MeasureName[];
  readonly lowest: readonly MeasureName[];
}

/** The panels of one flight, top to bottom; only what the log holds. */
export function flightPanels(context: FlightContext): readonly FlightPanel[] {
  const makers = [powerPanel, currentPanel, voltsPanel, speedPanel, temperaturePanel];
  return makers.flatMap((make) => {
    const found = make(context);
    return found === null ? [] : [found];
  });
}

function powerPanel(context: FlightContext): FlightPanel | null {
  const power = powerOfRows(context.recording);
  if (power === null) return null;
  const series: PanelSeries[] = [{ id: "power", words: "power", style: 1, trace: traceOf(context, power) }];
  return peaking(
    context,
    { id: "power", title: "Power", unit: "W", decimals: 0, startsAtZero: true, series },
    "peakPowerW",
  );
}

function currentPanel(context: FlightContext): FlightPanel | null {
  const amps = filledChannel(context.recording, "current");
  if (amps === null) return null;
  const series: PanelSeries[] = [
    { id: "current", words: "current", style: 2, trace: traceOf(context, amps) },
  ];
  return peaking(
    context,
    { id: "current", title: "Current", unit: "A", decimals: 1, startsAtZero: true, series },
    "peakCurrentA",
  );
}

function speedPanel(context: FlightContext): FlightPanel | null {
  const speed = filledChannel(context.recording, "shaftSpeed");
  if (speed === null) return null;
  const series: PanelSeries[] = [{ id: "speed", words: "shaft", style: 3, trace: traceOf(context, speed) }];
  const own = { id: "speed", title: "Shaft speed", unit: "rev/min", decimals: 0, startsAtZero: true, series };
  return peaking(context, own, "peakRpm");
}

type OwnParts = Pick<Panel, "id" | "title" | "unit" | "decimals" | "startsAtZero" | "series">;

function peaking(context: FlightContext, own: OwnParts, highest: MeasureName): FlightPanel {
  const parts = { ...own, limits: limitsOf(context, [highest]), marks: markOf(context, highest, "above") };
  return { panel: panelOf(context, parts), highest: [highest], lowest: [] };
}

/** Volts per cell: the cells one by one, else the pack over its cell count; pack volts without a count. */
function voltsPanel(context: FlightContext): FlightPanel | null {
  const spread = cellRangeOfRows(context.recording);
  if (spread !== null)
    return cellPanel(context, [
      { id: "lowestCell", words: "lowest", style: 1, trace: traceOf(context, spread.lowest) },
      { id: "highestCell", words: "highest", style: 2, trace: traceOf(context, spread.highest) },
    ]);
  const { cells } = context.facts.pack;
  if (cells === null) {
    const volts = filledChannel(context.recording, "packVoltage");
    return volts === null ? null : packPanel(context, volts);
  }
  const perCell = meanCellOfRows(context.recording, cells);
  if (perCell === null) return null;
  return cellPanel(context, [
    { id: "perCell", words: "per cell", style: 1, trace: traceOf(context, perCell) },
  ]);
}

function cellPanel(context: FlightContext, series: readonly PanelSeries[]): FlightPanel {
  const own = { id: "cells", title: "Volts per cell", unit: "V", decimals: 2, startsAtZero: false, series };
  const parts = {
    ...own,
    limits: limitsOf(context, ["minCellV"]),
    marks: markOf(context, "minCellV", "below"),
  };
  return { panel: panelOf(context, parts), highest: [], lowest: ["minCellV"] };
}

function packPanel(context: FlightContext, volts: Float64Array): FlightPanel {
  const series: PanelSeries[] = [{ id: "pack", words: "pack", style: 1, trace: traceOf(context, volts) }];
  const own = { id: "pack", title: "Pack volts", unit: "V", decimals: 1, startsAtZero: false, series };
  const parts = { ...own, limits: [], marks: markOf(context, "minPackV", "below") };
  return { panel: panelOf(context, parts), highest: [], lowest: ["minPackV"] };
}

const TEMPERATURES: readonly { channel: ChannelName; words: string; measure: MeasureName | null }[] = [
  { channel: "controllerTemperature", words: "controller", measure: "controllerPeakC" },
  { channel: "motorTemperature", words: "motor", measure: "motorPeakC" },
  { channel: "packTemperature", words: "pack", measure: "packPeakC" },
  { channel: "ambientTemperature", words: "air", measure: null },
];

function temperaturePanel(context: FlightContext): FlightPanel | null {
  const logged = TEMPERATURES.filter(({ channel }) => filledChannel(context.recording, channel) !== null);
  const [first] = logged;
  if (first === undefined) return null;
  const series = logged.map(({ channel, words }, index): PanelSeries => {
    const values = filledChannel(context.recording, channel) ?? new Float64Array();
    return { id: channel, words, style: STYLES[index] ?? 4, trace: traceOf(context, values) };
  });
  const measures = logged.flatMap(({ measure }) => measure ?? []);
  const own = {
    id: "temperature",
    title: logged.length === 1 ? `${capital(first.words)} temperature` : "Temperatures",
    unit: "°C",
    decimals: 1,
    startsAtZero: false,
    series,
  };
  const marks = apart(measures.flatMap((measure) => markOf(context, measure, "above")));
  const parts = { ...own, limits: limitsOf(context, measures), marks };
  return { panel: panelOf(context, parts), highest: measures, lowest: [] };
}

const STYLES = [1, 2, 3, 4] as const;
