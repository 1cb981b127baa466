/** The card that goes with the kit, written for the laboratory the vials go to. */
import type { KitCard } from "../model/index.ts";
import { paperWords } from "../words/index.ts";
import { type Html, html } from "./html.ts";
import { matrixCode } from "./mark.ts";
import type { Paper } from "./paper.ts";
import { sheetCss, sheetPage } from "./paper-css.ts";

/** Colonies beside each other in one table: what the sheet holds. */
const mostColumns = 8;

/** The looks that were chosen, with room for an answer a colony; what to look for stands in the first table alone. */
function looksAsked({ looks, colonies }: KitCard): Html {
  const words = paperWords.kit;
  const tables = Array.from({ length: Math.max(1, Math.ceil(colonies.length / mostColumns)) }, (_, at) => {
    const columns = colonies.slice(at * mostColumns, (at + 1) * mostColumns);
    const rows = looks.map(
      ({ term, how }) =>
        html`<tr><td class="wrap"><b>${term}</b>${at === 0 && html`<br>${how}`}</td>${columns.map(() => html`<td class="room"></td>`)}</tr>`,
    );
    return html`<table><thead><tr><th>${words.lookColumn}</th>${columns.map((code) => html`<th class="room">${code}</th>`)}</tr></thead><tbody>${rows}</tbody></table>`;
  });
  return html`<section><h2>${words.looks}</h2><div>${tables}<p class="small">${words.lookAnswers}</p></div></section>`;
}

/** One page: what is asked, which bees from where, how to keep and send them, what heeds. */
export function kitCardPaper(card: KitCard, page: "A4" | "Letter" = "A4"): Paper {
  const words = paperWords.kit;
  const rows = card.rows.map(
    (row) =>
      html`<tr><td class="c"><b>${row.code}</b></td><td>${row.colony}</td><td>${row.from}</td><td class="r">${row.bees}</td><td></td><td></td></tr>`,
  );
  const body = html`${card.isDemonstration && html`<p class="invented">${paperWords.invented}</p>`}
${card.stops.map((stop) => html`<p class="invented">${stop}</p>`)}<header class="top"><div><h1>${words.title}</h1><p>${words.forLaboratory} <b>${card.laboratory}</b></p></div>
<div class="label"><span class="code">${card.caseCode}</span>${matrixCode(card.caseCode)}<span>${card.place}</span></div></header>
<section><h2>${words.asked}</h2><p>${card.question}</p></section>
<section><h2>${words.vials}</h2><div><table><thead><tr><th>${words.code}</th><th>${words.colony}</th><th>${words.from}</th><th class="r">${words.bees}</th><th>${words.takenOn}</th><th>${words.by}</th></tr></thead><tbody>${rows}</tbody></table>${card.promise !== "" && html`<p class="small">${card.promise}</p>`}</div></section>
${card.looks.length > 0 && looksAsked(card)}${card.tests.length > 0 && html`<section><h2>${words.alsoTake}</h2><ul class="steps">${card.tests.map(({ term, specimen }) => html`<li><b>${term}</b>: ${specimen}</li>`)}</ul></section>`}${card.steps.length > 0 && html`<section><h2>${words.how}</h2><ul class="steps">${card.steps.map((step) => html`<li>${step}</li>`)}</ul></section>`}
<section><h2>${words.heed}</h2><div>${card.cautions.map((caution) => html`<p>${caution}</p>`)}</div></section>
<section><h2>${words.handOver}</h2><table><tbody><tr><td>${words.sentBy}</td><td>${words.sentOn}</td><td>${card.isInAlcohol && words.drained}</td></tr><tr><td>${words.receivedBy}</td><td>${words.receivedOn}</td><td>${words.countMatches}</td></tr></tbody></table></section>`;
  return {
    title: `${words.title} ${card.caseCode}`,
    pageCss: sheetPage(page, card.caseCode, card.place),
    css: sheetCss,
    body: body.html,
  };
}
