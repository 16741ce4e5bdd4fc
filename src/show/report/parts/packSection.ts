import { isKnown, plainNumber, quantityText, toPlace } from "../../../base/quantity/index.ts";
import type { PackPicture, WeakestPart } from "../../../flight/analysis/index.ts";
import { type Markup, numberAxis, type Plane, valueScale, wholeTrace } from "../../charts/index.ts";
import type { FlightContext } from "../reportInput.ts";
import { measureNumber, type PartNumber, type PartTable, partSection } from "./partSection.ts";
import { PACK, packLowest, packStarts, signedNumber } from "./partWords.ts";
import { planeFigure } from "./planeFigure.ts";

/** The pack under load: volts against amps with the fitted line, its resistances, and what it does under the planned current. */
export function packSection(context: FlightContext): Markup {
  const { picture } = context.analysed.pictures.pack;
  const { packResistanceMohm, packStartC } = context.flight.measures;
  const id = `${context.id}-pack`;
  const caution = isKnown(packStartC) ? [packStarts(packStartC), PACK.caution] : [PACK.caution];
  return partSection({
    id,
    title: PACK.title,
    meaning: picture === null ? context.meanings.pack : [...context.meanings.pack, ...caution],
    figure: picture === null ? null : figure(`${id}-volts`, picture),
    why: isKnown(packResistanceMohm) ? null : PACK.notFound(packResistanceMohm.why),
    numbers: numbers(context),
    tables: [...(picture === null ? [] : [table(picture)]), ...sideBySide(context.analysed.weakestPart)],
  });
}

const LINE_STYLES = [3, 1, 4] as const;

function figure(id: string, picture: PackPicture): Markup {
  const { points, lines, lowest } = picture;
  const shown = [...points, ...lines.flatMap(({ ends }) => ends)];
  const volts = shown.map(([, packV]) => packV);
  const amps = shown.map(([currentA]) => currentA);
  const plane: Plane = {
    id: "packLine",
    x: numberAxis(PACK.xAxis, Math.min(0, ...amps), 1.03 * Math.max(...amps)),
    y: valueScale(Math.min(...volts), Math.max(...volts), false),
    yTitle: PACK.yAxis,
    bands: [],
    dots: { style: 2, points },
    lines: lines.map(({ afterS, ends }, k) => ({
      id: `pack${afterS}`,
      words: PACK.line(afterS),
      style: LINE_STYLES[k] ?? 4,
      trace: wholeTrace(
        ends.map(([currentA]) => currentA),
        ends.map(([, packV]) => packV),
      ),
    })),
    walls: [],
    marks: [
      {
        x: lowest.currentA,
        y: lowest.packV,
        shape: "ring",
        words: PACK.lowest,
        barX: null,
        barY: null,
      },
    ],
  };
  return planeFigure(id, PACK.figure, plane, [
    PACK.key,
    packLowest(lowest.belowV, lowest.currentA, lowest.atS),
  ]);
}

function numbers(context: FlightContext): readonly PartNumber[] {
  const { byStepsMohm, differenceMohm } = context.analysed.pictures.pack;
  const found = isKnown(context.flight.measures.packResistanceMohm)
    ? [
        measureNumber(context, "packResistanceMohm", PACK.afterOne, PACK.wholeLog),
        measureNumber(context, "packResistance10sMohm", PACK.afterTen),
      ]
    : [];
  if (byStepsMohm !== null) {
    const value = { text: `${plainNumber(byStepsMohm)} mΩ`, number: byStepsMohm };
    const remark = differenceMohm === null ? null : PACK.difference(signedNumber(differenceMohm));
    found.push({ words: PACK.bySteps, name: "byStepsMohm", value, remark });
  }
  return [...found, measureNumber(context, "sagPerCellV"), measureNumber(context, "restPackV")];
}

function table({ bands }: PackPicture): PartTable {
  const rows = bands.map(({ fromA, toA, samples, medianV, lineV }) => [
    `${toPlace(fromA, -1)} to ${toPlace(toA, -1)}`,
    String(samples),
    toPlace(medianV, -2),
    toPlace(lineV, -2),
  ]);
  return { name: PACK.figure, caption: PACK.caption, heads: PACK.heads, rows };
}

/** Cells, or two packs in series, where each is logged. */
function sideBySide(weakest: WeakestPart | null): readonly PartTable[] {
  if (weakest === null) return [];
  const rows = weakest.parts.map(({ number, restV, minV, resistanceMohm, sagSharePct }) => [
    PACK.partName(weakest.kind, number),
    ...[restV, minV, resistanceMohm, sagSharePct].map(quantityText),
  ]);
  const name = weakest.kind === "cell" ? PACK.cells : PACK.packs;
  return [{ name, caption: PACK.partsCaption, heads: PACK.partHeads, rows }];
}
