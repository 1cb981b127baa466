/** Sheets of vial labels: each specimen three times, for the vial, the sheet and a spare. */
import type { LabelSheet, VialLabel } from "../model/index.ts";
import { paperWords } from "../words/index.ts";
import { type Html, html } from "./html.ts";
import { matrixCode } from "./mark.ts";
import type { Paper } from "./paper.ts";
import { labelCss } from "./paper-css.ts";

const uses = ["vial", "sheet", "spare"] as const;

function vial(label: VialLabel, use: (typeof uses)[number], isLow: boolean): Html {
  const day = label.takenOn ? html`<time>${label.takenOn}</time>` : html`<time>____-__-__</time>`;
  // A low label has room for three lines beside the code: place and what it is kept in share one.
  return isLow
    ? html`<div class="vial"><b class="k">${label.code}</b>${matrixCode(label.code)}<span><span class="col">${label.colony}</span> ${day}</span><span>${label.from}</span><span class="wide"><span>${label.keptIn}</span><span>${paperWords.use[use]}</span></span></div>`
    : html`<div class="vial"><b class="k">${label.code}</b>${matrixCode(label.code)}<span class="col">${label.colony}</span>${day}<span class="wide">${label.from}</span><span class="wide"><span>${label.keptIn}</span><span>${paperWords.use[use]}</span></span></div>`;
}

/** Pages of labels ready to print at 100 %, the first `used` places of the first sheet left empty. */
export function labelPaper(sheet: LabelSheet): Paper {
  const { stock } = sheet;
  const cells = sheet.labels.flatMap((label) => uses.map((use) => vial(label, use, stock.height < 15)));
  const perPage = stock.columns * stock.rows;
  const pages = Math.max(1, Math.ceil((cells.length + sheet.used) / perPage));
  const drawn = Array.from({ length: pages }, (_, page) => {
    const first = page * perPage - sheet.used;
    const here = cells
      .map((cell, index) => ({ cell, place: index - first }))
      .filter(({ place }) => place >= 0 && place < perPage)
      .map(({ cell, place }) => {
        const left = stock.left + (place % stock.columns) * stock.pitchX;
        const top = stock.top + Math.floor(place / stock.columns) * stock.pitchY;
        return html`<li style="left:${left.toFixed(2)}mm;top:${top.toFixed(2)}mm">${cell}</li>`;
      });
    const next =
      page === pages - 1 ? paperWords.nextFreeLabel(((cells.length + sheet.used - 1) % perPage) + 2, perPage) : "";
    return html`<div class="page"><p class="slug head"><span class="c">${sheet.caseCode}</span><span>${sheet.title}${sheet.isDemonstration ? ` · ${paperWords.invented}` : ""}</span><span>${paperWords.page(page + 1, pages)}</span></p><ul>${here}</ul><p class="slug feet"><span>${paperWords.printAtFullSize}</span><span>${next}</span></p></div>`;
  });
  return { title: sheet.title, css: labelCss(stock), body: html`${drawn}`.html };
}
