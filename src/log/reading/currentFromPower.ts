import type { ChannelName } from "../../base/channels/index.ts";
import type { ColumnView } from "./columnView.ts";

/** A header that names watts or kilowatts: a bare "power" may be a throttle in percent, */
const POWER = /(^|[^a-z])k?w(atts?)?($|[^a-z])/i;
/** and nothing of energy, of other supplies, of the shaft's power or of a setting. */
const OTHER =
  /(wh|energ|stage|limit|max|shaft|mech|servo|receiver|rx|tx|bec|percent|%|dbm|mode|status|source|supply)/i;
const KILO = /(^|[^a-z])kw(att|atts)?($|[^a-z])/i;
/** Fewer volts show no pack. */
const LEAST_V = 0.5;
/** A power that never exceeds this says nothing of a drive, watts; more than the second is another unit. */
const LEAST_PEAK_W = 20;
const MOST_PEAK_W = 60_000;

export interface DerivedCurrent {
  readonly values: Float64Array;
  readonly view: ColumnView;
}

/** Current as power over volts, where the log holds both and no current; null where one of several could be meant. */
export function currentFromPower(
  channels: ReadonlyMap<ChannelName, Float64Array>,
  views: readonly ColumnView[],
): DerivedCurrent | null {
  const packV = channels.get("packVoltage");
  if (channels.has("current") || packV === undefined) return null;
  const [view, ...others] = views.filter(isPower);
  if (view === undefined || others.length > 0) return null;
  const factor = KILO.test(view.header) ? 1000 : 1;
  const peakW = view.range.high99 * factor;
  if (!(peakW >= LEAST_PEAK_W && peakW <= MOST_PEAK_W)) return null;
  const values = view.values.map((power, row) =>
    packV[row]! >= LEAST_V ? (power * factor) / packV[row]! : Number.NaN,
  );
  return { values, view };
}

function isPower({ header, range, quantity }: ColumnView): boolean {
  return quantity === null && range.count > 0 && !range.isDead && POWER.test(header) && !OTHER.test(header);
}
