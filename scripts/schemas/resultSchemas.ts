import * as v from "valibot";
import { CHANNEL_NAMES } from "../../src/base/channels/index.ts";
import { MEASURE_NAMES, MEASURE_UNITS } from "../../src/flight/analysis/index.ts";
import { FACT_WORDS } from "../../src/flight/judgement/index.ts";
import { PLAN_MEASURES } from "../../src/flight/prediction/index.ts";

/** The JSON results as schemas. More keys may be added to a result at any time, so none is closed. */

const text = (description: string) => v.pipe(v.string(), v.description(description));
const count = (description: string) =>
  v.pipe(v.number(), v.integer(), v.minValue(0), v.description(description));
const seconds = (description: string) => v.pipe(v.number(), v.description(`${description}, seconds.`));
const line = () => v.pipe(v.number(), v.integer(), v.minValue(1), v.description("File line, 1-based."));

const sample = v.pipe(
  v.object({ atS: seconds("Time since the first row"), line: line() }),
  v.description("The sample a number rests on."),
);

const knownQuantity = v.object({
  value: v.number(),
  low: v.pipe(
    v.nullable(v.number()),
    v.description("Lower end of the 95 % interval; null for an upper bound."),
  ),
  high: v.pipe(
    v.nullable(v.number()),
    v.description("Upper end of the 95 % interval; null for a lower bound."),
  ),
  unit: v.string(),
  basis: v.picklist(["measured", "derived", "estimated", "predicted"]),
  bound: v.optional(v.picklist(["atLeast", "atMost", "interval"])),
  why: v.optional(v.string()),
  doubt: v.optional(text("Why no judgement may rest on it.")),
  sample: v.optional(sample),
});
const unknownQuantity = v.object({
  value: v.null(),
  unit: v.string(),
  why: text("Why the number cannot be given."),
});

export const quantity = v.pipe(
  v.union([knownQuantity, unknownQuantity]),
  v.description("A number with its 95 % interval or bound, or null with the reason."),
);

export const notice = v.object({
  code: v.pipe(
    v.string(),
    v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
    v.description("Stable identifier for programs."),
  ),
  severity: v.picklist(["note", "warning", "question", "refusal"]),
  text: v.pipe(v.string(), v.minLength(1), v.description("What, where, the value and what to do now.")),
  count: v.optional(count("How many cells or rows it is about.")),
  lines: v.optional(v.pipe(v.array(line()), v.maxLength(20), v.description("The first file lines."))),
  options: v.optional(
    v.pipe(v.array(v.string()), v.description("Command-line options that settle it, each ready to paste.")),
  ),
});

export const dialect = v.object({
  encoding: v.picklist(["utf-8", "utf-8-bom", "utf-16le", "utf-16be", "windows-1252"]),
  delimiter: text('One character; " " stands for runs of spaces.'),
  decimalMark: v.picklist([".", ","]),
  headerLine: line(),
});

const channelName = v.picklist([...CHANNEL_NAMES]);

const log = v.object({
  file: text("Name of the log."),
  sha256: v.pipe(
    v.string(),
    v.regex(/^([0-9a-f]{64})?$/),
    v.description("Digest of the bytes; empty when the file could not be read."),
  ),
  rows: count("Data lines under a header."),
  rowsUsed: count("Rows with usable time, voltage and current."),
  durationS: seconds("First to last usable row"),
  holes: count("Stretches without usable rows."),
  holeS: seconds("Their time together"),
  dialect: v.nullable(dialect),
  headerSignature: v.nullable(text("The same for every log with this header.")),
  channels: v.array(
    v.object({
      channel: channelName,
      header: v.string(),
      column: v.pipe(v.number(), v.integer(), v.minValue(1)),
      unit: text("As in the log."),
      why: v.string(),
    }),
  ),
  notices: v.array(notice),
});

const phase = v.object({
  phase: v.picklist(["rest", "runUp", "taxi", "takeOff", "flight", "landing", "after"]),
  startS: seconds("Since the first row"),
  endS: seconds("Since the first row"),
});

export const measures = v.pipe(
  v.object(Object.fromEntries(MEASURE_NAMES.map((name) => [name, quantity]))),
  v.description(`Units: ${MEASURE_NAMES.map((name) => `${name} ${MEASURE_UNITS[name]}`).join(", ")}.`),
);

const judgement = v.object({
  line: v.picklist([...MEASURE_NAMES]),
  against: v.picklist(["plan", "limit"]),
  value: v.pipe(v.nullable(v.number()), v.description("The planned number or the limit.")),
  source: text("The key of the aircraft file it comes from."),
  sense: v.picklist(["atMost", "atLeast", "around"]),
  measured: quantity,
  verdict: v.picklist(["within", "close", "outside", "not judged"]),
  text: v.string(),
});

const whyOff = v.pipe(
  v.object({
    line: v.picklist([...MEASURE_NAMES]),
    planned: v.number(),
    measured: quantity,
    baseline: v.pipe(quantity, v.description("What the aircraft as described gives.")),
    planItself: v.pipe(quantity, v.description("The planned number less the baseline.")),
    parts: v.array(
      v.object({
        fact: v.picklist(Object.keys(FACT_WORDS)),
        change: v.pipe(
          quantity,
          v.description("Change of the line when this fact alone is the measured one."),
        ),
      }),
    ),
    rest: v.pipe(quantity, v.description("What remains.")),
    text: text("The same in one sentence."),
  }),
  v.description(
    "Where a planned line that did not hold went: measured = planned - planItself + parts + rest.",
  ),
);

const weakestPart = v.pipe(
  v.object({
    kind: v.picklist(["cell", "pack"]),
    parts: v.array(
      v.object({
        number: v.pipe(v.number(), v.integer(), v.minValue(1)),
        restV: quantity,
        minV: quantity,
        resistanceMohm: quantity,
        sagSharePct: v.pipe(
          quantity,
          v.description("Its volt steps under load over the parts' mean, percent."),
        ),
      }),
    ),
    weakest: v.pipe(
      v.nullable(v.number()),
      v.description("Number of the part that is clearly the weakest; null where none is."),
    ),
  }),
  v.description(
    "Cells, or two packs in series, side by side; null where the log does not hold each of them.",
  ),
);

export const flight = v.object({
  kind: v.picklist(["flight", "benchRun"]),
  startedAt: v.nullable(text("The log's own clock at startS, as written.")),
  startS: seconds("Motor running from, since the first row"),
  endS: seconds("Motor running until, since the first row"),
  complete: v.pipe(v.boolean(), v.description("False when the log starts or ends under power.")),
  phases: v.array(phase),
  measures,
  isChargeDoubtful: v.optional(
    v.pipe(v.literal(true), v.description("The charge left and the resting volts cannot both be right.")),
  ),
  judgements: v.array(judgement),
  whyOff: v.optional(v.array(whyOff)),
  weakestPart: v.optional(v.nullable(weakestPart)),
  headline: text("One sentence from the numbers."),
});

export const flightCheck = v.pipe(
  v.object({
    format: v.literal("tallywatt/flight-check"),
    version: v.literal(1),
    aircraft: v.nullable(v.string()),
    log,
    flights: v.array(flight),
  }),
  v.title("tallywatt flight check"),
  v.description("What one log says: the result of `tallywatt check LOG --json`."),
);

export const flightChecks = v.pipe(
  v.object({
    format: v.literal("tallywatt/flight-checks"),
    version: v.literal(1),
    checks: v.pipe(v.array(flightCheck), v.minLength(2)),
  }),
  v.title("tallywatt flight checks"),
  v.description("What several logs say: the result of `tallywatt check LOG LOG --json`."),
);

export const columns = v.pipe(
  v.object({
    format: v.literal("tallywatt/columns"),
    version: v.literal(1),
    file: v.string(),
    dialect: v.nullable(dialect),
    headerSignature: v.nullable(v.string()),
    columns: v.array(
      v.object({
        channel: v.pipe(v.nullable(channelName), v.description("Null: left alone.")),
        header: v.string(),
        column: v.pipe(v.number(), v.integer(), v.minValue(1)),
        unit: v.nullable(v.string()),
        why: text("Why the column is read so."),
        options: v.pipe(
          v.array(v.string()),
          v.description("Options that would force this or the likely other choices."),
        ),
      }),
    ),
    notices: v.array(notice),
  }),
  v.title("tallywatt columns"),
  v.description("How each column of a log is read: the result of `tallywatt columns LOG --json`."),
);

const planMeasures = v.pipe(
  v.object(Object.fromEntries(PLAN_MEASURES.map((name) => [name, quantity]))),
  v.description(`Units: ${PLAN_MEASURES.map((name) => `${name} ${MEASURE_UNITS[name]}`).join(", ")}.`),
);

const conditions = v.object({
  ambientC: v.pipe(v.nullable(v.number()), v.description("Null: the usual air of the field.")),
  elevationM: v.pipe(v.nullable(v.number()), v.description("Null: the field's.")),
  reservePct: v.number(),
});

const planSide = {
  conditions,
  measures: planMeasures,
  staticThrustN: v.pipe(quantity, v.description("An estimate from published thrust coefficients, N.")),
  basisOf: v.pipe(
    v.record(v.string(), v.string()),
    v.description("Each part and where its number comes from."),
  ),
};

export const plan = v.pipe(
  v.object({
    format: v.literal("tallywatt/plan"),
    version: v.literal(1),
    aircraft: v.nullable(v.string()),
    ...planSide,
    judgements: v.array(judgement),
    remarks: v.pipe(
      v.array(v.string()),
      v.description("What widens the intervals, and which flights were left out and why."),
    ),
    text: text("The plan in a few sentences."),
  }),
  v.title("tallywatt plan"),
  v.description("The budget that follows from what is fitted: the result of `tallywatt plan --json`."),
);

const loadRatio = v.pipe(
  v.object({
    value: v.number(),
    low: v.pipe(v.number(), v.description("Of the kind on average, 95 % interval.")),
    high: v.number(),
    lowOfTwo: v.pipe(v.number(), v.description("Of two single propellers, 95 % interval.")),
    highOfTwo: v.number(),
    isExtrapolated: v.pipe(v.boolean(), v.description("Outside the shapes measured of the kind.")),
  }),
  v.description("Load at one speed over that of the fitted propeller."),
);

const sizedPropeller = { diameterIn: v.number(), pitchIn: v.number(), load: loadRatio };

export const swap = v.pipe(
  v.object({
    format: v.literal("tallywatt/swap"),
    version: v.literal(1),
    aircraft: v.nullable(v.string()),
    change: v.object({
      diameterIn: v.nullable(v.number()),
      pitchIn: v.nullable(v.number()),
      blades: v.nullable(v.number()),
      cells: v.nullable(v.number()),
      capacityMah: v.nullable(v.number()),
    }),
    before: v.object(planSide),
    ...planSide,
    judgements: v.array(judgement),
    extrapolation: v.pipe(v.array(v.string()), v.description("How far it reaches beyond the data.")),
    ladder: v.pipe(
      v.array(v.object(sizedPropeller)),
      v.description("Propellers of the fitted one's kind with its load."),
    ),
    inchRule: v.array(
      v.object({
        steps: count("Inches up in diameter and down in pitch."),
        ...sizedPropeller,
        verdict: v.picklist(["holds", "fails", "cannot be told"]),
      }),
    ),
    inchRuleText: v.nullable(text("Where one inch up and one down keeps the load.")),
    text: text("The change in a few sentences."),
  }),
  v.title("tallywatt swap"),
  v.description("Before and after a change: the result of `tallywatt swap --json`."),
);
