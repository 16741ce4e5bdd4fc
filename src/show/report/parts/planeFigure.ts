import { html, type Markup, type Plane, planeDrawing } from "../../charts/index.ts";

/** A plane with its title, axes and the sentences that say what it shows. */
export function planeFigure(
  id: string,
  title: string,
  plane: Plane,
  sentences: readonly (string | Markup)[],
): Markup {
  const drawing = planeDrawing(plane, { nameId: `${id}-name`, descriptionId: `${id}-text` });
  const isMany = plane.lines.length > 1 ? " many" : "";
  const named = plane.walls.some(({ axis }) => axis === "x") ? " named-above" : "";
  const says = sentences.map((sentence) => html`<p>${sentence}</p>`);
  return html`<figure class="panel plane-panel${isMany}" data-panel="${plane.id}"><h4 id="${id}-name">${title}</h4><p class="y-title" aria-hidden="true">${plane.yTitle}</p><div class="row drawing${named}">${drawing.valueAxis}${drawing.plot}${drawing.ends}</div><div class="row"><div></div>${drawing.xAxis}</div><figcaption class="says" id="${id}-text">${says}</figcaption></figure>`;
}
