/** Sheets of vial labels: each specimen three times, for the vial, the sheet and a spare. */
import type { LabelSheet, VialLabel } from "../model/index.ts";
import { paperWords } from "../words/index.ts";
import { type Html, html } from "./html.ts";
import { matrixCode } from "./mark.ts";
import type { Paper } from "./paper.ts";
import { labelCss, labelPage } from "./paper-css.ts";

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
    // Places already used on the first sheet stay empty: the grid keeps their room.
    const here = Array.from({ length: perPage }, (_, place) => cells[first + place] ?? null);
    const last = here.findLastIndex((cell) => cell !== null);
    const drawnHere = here.slice(0, last + 1).map((cell) => html`<li>${cell}</li>`);
    const next =
      page === pages - 1 ? paperWords.nextFreeLabel(((cells.length + sheet.used - 1) % perPage) + 2, perPage) : "";
    return html`<div class="page"><p class="slug head"><span class="c">${sheet.caseCode}</span><span>${sheet.title}${sheet.isDemonstration ? ` · ${paperWords.invented}` : ""}</span><span>${paperWords.page(page + 1, pages)}</span></p><ul>${drawnHere}</ul><p class="slug feet"><span>${paperWords.printAtFullSize}</span><span>${next}</span></p></div>`;
  });
  return { title: sheet.title, pageCss: labelPage(stock), css: labelCss(stock), body: html`${drawn}`.html };
}
