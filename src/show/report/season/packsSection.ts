import { type KnownQuantity, plainNumber, quantityText } from "../../../base/quantity/index.ts";
import { type PackOverSeason, packsOverSeason } from "../../../season/overview/index.ts";
import {
  html,
  type IntervalMark,
  intervalScales,
  type Markup,
  shortened,
  visibleText,
} from "../../charts/index.ts";
import { flightReference } from "./flightWords.ts";
import type { SeasonContext } from "./seasonInput.ts";
import { mostPacksWords, PACKS_KEY, PACKS_LEAD, PACKS_TITLE, UNNAMED_PACK } from "./sentences.ts";

const MOST_PACKS = 60;
const LONGEST_NAME = 40;

const HEADS = [
  "pack",
  "flights",
  "charges",
  "first, last flight",
  "first resistance",
  "latest resistance",
  "on one scale",
  "median charge, mAh",
  "lowest cell, V",
];

/** The packs in one table, their resistance on one scale. */
export function packsSection(context: SeasonContext): Markup {
  const all = packsOverSeason(context.flights);
  const packs = all.slice(0, MOST_PACKS);
  const scales = intervalScales(packs.map(marksOf), "mΩ");
  const rows = packs.map((pack, index) => packRow(context, pack, scales.rows[index]!));
  const heads = HEADS.map((head) => html`<th scope="col">${head}</th>`);
  const more = all.length > MOST_PACKS ? html`<p>${mostPacksWords(all.length - MOST_PACKS)}</p>` : html``;
  return html`<section aria-labelledby="packs"><h2 id="packs">${PACKS_TITLE}</h2><p>${PACKS_LEAD}</p><p class="key">${PACKS_KEY} ${scales.words}</p><div class="scroll" role="group" tabindex="0" aria-label="${PACKS_TITLE}, table"><table class="packs"><thead><tr>${heads}</tr></thead><tbody>${rows}</tbody></table></div>${more}</section>`;
}

function marksOf({ firstResistance, lastResistance }: PackOverSeason): IntervalMark | null {
  if (lastResistance === null) return null;
  const { value, low, high } = lastResistance;
  return { before: firstResistance?.value ?? null, value, low, high };
}

function packRow({ flights }: SeasonContext, pack: PackOverSeason, drawing: Markup): Markup {
  const name = pack.pack === null ? UNNAMED_PACK : shortened(visibleText(pack.pack), LONGEST_NAME).short;
  const [first, last] = [flights[pack.firstPlace], flights[pack.lastPlace]];
  const span = [first, last].map((flight) => (flight === undefined ? "" : flightReference(flight).short));
  return html`<tr><th scope="row">${name}</th><td>${pack.flights}</td><td>${pack.charges}</td><td>${span[0] === span[1] ? (span[0] ?? "") : span.join(", ")}</td><td>${resistance(pack.firstResistance)}</td><td>${resistance(pack.lastResistance)}</td><td class="drawn">${drawing}</td><td>${number(pack.medianChargeMah)}</td><td>${number(pack.lowestCellV)}</td></tr>`;
}

function resistance(quantity: KnownQuantity | null): string {
  return quantity === null ? "not known" : quantityText(quantity);
}

function number(value: number | null): string {
  return value === null ? "not known" : plainNumber(value);
}
