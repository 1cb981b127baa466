/** Parts of the report about the case: signs, ranked causes, before and after. */
import type { Report } from "../model/index.ts";
import { paperWords } from "../words/index.ts";
import { type Html, html } from "./html.ts";

const words = paperWords.report;

/** A line for each colony. */
export const signsTold = (signs: Report["signs"]): Html =>
  html`<ul class="do">${signs.map(({ colony, says }) => html`<li><span class="c">${colony}</span><span>${says}</span></li>`)}</ul>`;

/** The verdict of each colony and its causes out of 10. */
export const causesRanked = (causes: Report["causes"]): Html =>
  html`${causes.map(
    ({ colony, season, verdict, notes, rows }) =>
      html`<div class="own"><p><b>${colony}.</b> ${season} ${verdict}</p>${notes.map((note) => html`<p class="small">${note}</p>`)}${
        rows.length > 0 &&
        html`<table class="ranked"><thead><tr><th>${words.cause}</th><th class="r">${words.of10}</th><th class="r">${words.causeRange}</th><th>${words.word}</th></tr></thead><tbody>${rows.map((row) => html`<tr><td class="wrap">${row.term}</td><td class="r">${row.number}</td><td class="r">${row.range}</td><td>${row.word}</td></tr>`)}</tbody></table>`
      }</div>`,
  )}<p class="small">${words.causesNote}</p>`;

/** The counts of both groups, then the fall by each method with its range. */
export function effectTold(effect: Report["effect"]): Html {
  if (!effect) return html``;
  const groups = html`<table><thead><tr><th>${words.group}</th><th>${words.before}</th><th>${words.after}</th></tr></thead><tbody>${effect.groups.map((row) => html`<tr><td class="wrap">${row.name}</td><td>${row.before}</td><td>${row.after}</td></tr>`)}</tbody></table>`;
  const methods = html`<table class="ranked"><thead><tr><th>${words.method}</th><th class="r">${words.inHundred}</th><th class="r">${words.causeRange}</th></tr></thead><tbody>${effect.methods.map((row) => html`<tr><td class="wrap">${row.name}</td><td class="r">${row.value}</td><td class="r">${row.range}</td></tr>`)}</tbody></table>`;
  return html`${groups}${methods}${effect.says.map((line) => html`<p class="small">${line}</p>`)}`;
}
