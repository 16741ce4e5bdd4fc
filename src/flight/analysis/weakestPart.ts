import { isCellChannel } from "../../base/channels/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import { highEnd, isKnown, known, lowEnd, type Quantity, unknown } from "../../base/quantity/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import { type FlightContext, runningRows } from "./flightContext.ts";
import type { PackPart, WeakestPart } from "./packPart.ts";
import { extremeOf } from "./peaks.ts";
import { medianBefore } from "./restVoltage.ts";
import { type SagShare, sagShares } from "./sagShares.ts";
import { NO_REST_BEFORE } from "./sentences.ts";
import { LOAD_HARDLY_MOVES, NO_CURRENT_TO_SHARE, weakestNotice } from "./weakestSentences.ts";

/** Jackknife error of twelve stretches to a 95 % half-width: Student t at 11 degrees of freedom. */
const T_OF_BLOCKS = 2.2;
const FEWEST_PARTS = 2;

/** Cells (or two packs in series) side by side; null where the log does not hold each of two or more. */
export function weakestPart(context: FlightContext, packResistanceMohm: Quantity): WeakestPart | null {
  const { recording } = context;
  const kind = recording.channels.has("packVoltage1") ? "pack" : "cell";
  const channels = [...recording.channels.keys()].filter(
    kind === "pack" ? (name) => name === "packVoltage1" || name === "packVoltage2" : isCellChannel,
  );
  const working = channels.flatMap((channel) => {
    const values = workingChannel(recording, channel);
    return values === null ? [] : [{ channel, values, number: Number(/\d+$/.exec(channel)?.[0]) }];
  });
  if (working.length < FEWEST_PARTS || context.group === null) return null;
  const currentA = workingChannel(recording, "current");
  const volts = working.map(({ values }) => values);
  const shares = currentA === null ? null : sagShares(recording, volts, currentA, context.rows);
  const noShare = currentA === null ? NO_CURRENT_TO_SHARE : LOAD_HARDLY_MOVES;
  const parts = working.map(({ channel, values, number }, at): PackPart => {
    const share = shares === null ? null : halfWidthOf(shares[at]!, context);
    return {
      number,
      restV: restOf(context, values),
      minV: extremeOf(recording, channel, runningRows(context), "lowest", voltGain(context), 0),
      resistanceMohm:
        share === null ? unknown("mohm", noShare) : partOf(packResistanceMohm, share, working.length),
      sagSharePct:
        share === null
          ? unknown("%", noShare)
          : known(100 * share.relative, 100 * share.halfWidth, "%", "derived"),
    };
  });
  return { kind, parts, weakest: clearlyWeakest(parts) };
}

/** What a reader should know: the part that is clearly weaker than every other. */
export function weakestNotices(found: WeakestPart | null): readonly Notice[] {
  const weakest = found?.parts.find(({ number }) => number === found.weakest);
  return found && weakest ? [weakestNotice(found, weakest)] : [];
}

interface ShareInterval {
  readonly relative: number;
  readonly halfWidth: number;
}

function halfWidthOf({ relative, standardError }: SagShare, context: FlightContext): ShareInterval {
  // Each column has a gain of its own.
  return { relative, halfWidth: Math.hypot(T_OF_BLOCKS * standardError, voltGain(context) * relative) };
}

function voltGain({ facts }: FlightContext): number {
  return facts.sensors.voltageAccuracyPct / 100;
}

function partOf(pack: Quantity, { relative, halfWidth }: ShareInterval, count: number): Quantity {
  if (!isKnown(pack)) return unknown("mohm", pack.why);
  const packHalfWidth = (highEnd(pack) - lowEnd(pack)) / 2;
  const value = (pack.value * relative) / count;
  return known(
    value,
    value * Math.hypot(packHalfWidth / pack.value, halfWidth / relative),
    "mohm",
    "derived",
  );
}

function restOf(context: FlightContext, values: Float64Array): Quantity {
  const first = context.group?.runs[0];
  const rest =
    first === undefined ? null : medianBefore(context.recording, context.rows, first.firstRow, values);
  if (rest === null) return unknown("V", NO_REST_BEFORE);
  return known(
    rest.median,
    Math.hypot(voltGain(context) * rest.median, 2 * rest.standardError),
    "V",
    "measured",
  );
}

/** All share the pack's resistance and its doubt: they are told apart by their shares alone. */
function clearlyWeakest(parts: readonly PackPart[]): number | null {
  const shares = parts.map(({ number, sagSharePct }) => ({ number, share: sagSharePct }));
  const ranked = shares
    .flatMap(({ number, share }) =>
      isKnown(share) ? [{ number, low: share.low!, high: share.high!, value: share.value }] : [],
    )
    .toSorted((one, other) => other.value - one.value);
  const [first, ...others] = ranked;
  if (first === undefined || others.length === 0) return null;
  return others.every(({ high }) => high < first.low) ? first.number : null;
}
