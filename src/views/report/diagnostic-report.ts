/** The diagnostic report: the answer in one sentence, a picture, what could have been missed, what to do, how far to trust it. */
import type { Report, ReportRow } from "../model/index.ts";
import { paperWords } from "../words/index.ts";
import { type Html, html } from "./html.ts";
import { matrixCode } from "./mark.ts";
import type { Paper } from "./paper.ts";
import { sheetCss, sheetPage } from "./paper-css.ts";
import { causesRanked, effectTold, signsTold } from "./report-case.ts";

const words = paperWords.report;

/** 100 squares, filled from the bottom left: black the estimate, dots the range. */
function squares(picture: NonNullable<Report["picture"]>): Html {
  const side = 4.3;
  const pitch = 5.05;
  const cells = Array.from({ length: 100 }, (_, index) => {
    const x = (index % 10) * pitch;
    const y = (9 - Math.floor(index / 10)) * pitch;
    const isIn = index < Math.round(picture.value);
    const isInRange = index >= Math.round(picture.low) && index < Math.round(picture.high);
    const box = isIn
      ? html`<rect x="${x.toFixed(2)}" y="${y.toFixed(2)}" width="${side}" height="${side}" fill="#000"/>`
      : html`<rect x="${(x + 0.15).toFixed(2)}" y="${(y + 0.15).toFixed(2)}" width="${side - 0.3}" height="${side - 0.3}" fill="none" stroke="#000" stroke-width=".3"/>`;
    const dot =
      isInRange &&
      html`<circle cx="${(x + side / 2).toFixed(2)}" cy="${(y + side / 2).toFixed(2)}" r=".75" fill="${isIn ? "#fff" : "#000"}"/>`;
    return html`${box}${dot}`;
  });
  return html`<div><svg width="49.75mm" height="49.75mm" viewBox="0 0 49.75 49.75" role="img" aria-label="${words.squares(picture)}">${cells}</svg><p class="key">${words.squaresKey(picture)}</p></div>`;
}

/** A bar on a scale from 0 to the end, a tick at the estimate, published lines drawn through. */
function bar(row: ReportRow, lines: readonly number[], end: number): Html {
  if (!row.estimate) return html``;
  const at = (share: number): number => (Math.min(share, end) / end) * 33;
  const { value, low, high } = row.estimate;
  const through = lines.map(
    (line) => html`<path d="M${at(line).toFixed(2)} 0V5" stroke="#000" stroke-width=".18" stroke-dasharray=".6 .6"/>`,
  );
  const fill = row.isLimited ? "url(#hatch)" : "#777";
  return html`<svg width="33mm" height="5mm" viewBox="0 0 33 5" aria-hidden="true">${through}<path d="M0 2.5H33" stroke="#000" stroke-width=".15"/><rect x="${at(low).toFixed(2)}" y="1.4" width="${Math.max(at(high) - at(low), 0.4).toFixed(2)}" height="2.2" fill="${fill}" stroke="#000" stroke-width=".25"/><path d="M${Math.max(at(value), 0.3).toFixed(2)} .3v4.4" stroke="#000" stroke-width=".7"/></svg>`;
}

function specimenRow(row: ReportRow, lines: readonly number[], end: number): Html {
  const estimate = row.estimate
    ? words.range(Math.round(row.estimate.value), Math.round(row.estimate.low), Math.round(row.estimate.high))
    : words.noEstimate;
  return html`<tr><td class="c">${row.code}</td><td>${row.colony}</td><td>${row.from}</td><td class="wrap">${row.condition}</td><td class="r">${row.read}</td><td class="r">${row.withMites}</td><td class="r">${estimate}</td><td>${bar(row, lines, end)}</td></tr>`;
}

/** The whole report as a paper of one or more pages; the last line says that it ends. */
export function reportPaper(report: Report, page: "A4" | "Letter" = "A4"): Paper {
  const end = Math.max(60, ...report.rows.map((row) => Math.ceil((row.estimate?.high ?? 0) / 10) * 10));
  const pattern = html`<svg class="defs" width="0" height="0" aria-hidden="true"><defs><pattern id="hatch" width="1.2" height="1.2" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="1.2" height="1.2" fill="#fff"/><path d="M0 0V1.2" stroke="#000" stroke-width=".5"/></pattern></defs></svg>`;
  const found = html`<div class="ans${report.picture ? "" : " alone"}"><div><p class="say"><b>${report.answer.heavy}</b> ${report.answer.rest}</p>${report.below.map((line) => html`<p class="small">${line}</p>`)}</div>${report.picture && squares(report.picture)}</div>`;
  const looked = html`<table class="specimens"><thead><tr><th>${words.specimen}</th><th>${words.colony}</th><th>${words.from}</th><th>${words.condition}</th><th class="r">${words.read}</th><th class="r">${words.withMites}</th><th class="r">${words.inHundred}</th><th>${words.lines(report.lines)}</th></tr></thead><tbody>${report.rows.map((row) => specimenRow(row, report.lines, end))}</tbody></table><p class="small">${report.howRead}</p>`;
  const paragraphs = (lines: readonly string[]): Html => html`${lines.map((line) => html`<p>${line}</p>`)}`;
  const steps = (all: Report["toDo"]): Html =>
    html`<ol class="do">${all.map((step) => html`<li><time>${step.on}</time><span>${step.what}</span></li>`)}</ol>`;
  // A part that can fill a page goes on over the next one, between colonies, so that no page stays half empty.
  // Parts that have nothing to say are left out, and the numbers run on without a gap.
  const parts: readonly { title: string; content: Html; isThere: boolean; isLong?: boolean }[] = [
    { title: words.asked, content: html`<p>${report.asked}</p>`, isThere: true },
    { title: words.found, content: found, isThere: true },
    { title: words.looked, content: looked, isThere: report.rows.length > 0 },
    { title: words.missed, content: paragraphs(report.missed), isThere: true },
    { title: words.signs, content: signsTold(report.signs), isThere: report.signs.length > 0, isLong: true },
    { title: words.causes, content: causesRanked(report.causes), isThere: report.causes.length > 0, isLong: true },
    { title: words.done, content: steps(report.done), isThere: report.done.length > 0 },
    { title: words.effect, content: effectTold(report.effect), isThere: report.effect !== null },
    { title: words.opinion, content: steps(report.toDo), isThere: true },
    { title: words.heed, content: paragraphs(report.heed), isThere: true },
  ].filter((part) => part.isThere);
  const numberOf = (title: string): number => 1 + parts.findIndex((part) => part.title === title);
  const body = html`${pattern}${report.isDemonstration && html`<p class="invented">${paperWords.invented}</p>`}${report.stops.map((stop) => html`<p class="invented">${stop}</p>`)}
<header class="top"><div><h1>${words.title}</h1><p>${words.caseLine} <span class="c">${report.caseCode}</span><br>${words.printed(report.printedOn)}</p></div>
<div class="label"><span class="code">${report.code}</span>${matrixCode(report.code)}<span>${report.place}</span><span class="row"><span>${report.area}</span><span>${report.colonies}</span></span>${report.sampledOn !== null && html`<span class="row"><span>${words.sampled}</span><time>${report.sampledOn}</time></span>`}</div></header>
${parts.map(({ title, content, isLong = false }, index) => html`<section${isLong && html` class="long"`}><h2><span>${index + 1}</span>${title}</h2><div>${content}</div></section>`)}
<section class="fine"><h2>${words.rules}</h2><div><p>${report.rules}</p>${report.heads.length > 0 && html`<p>${words.heads} ${report.heads.join("; ")}.</p>`}<p>${words.endOfReport({ causes: report.causes.length > 0 ? numberOf(words.causes) : null, opinion: numberOf(words.opinion) })}</p></div></section>`;
  return {
    title: `${words.title} ${report.code}`,
    pageCss: sheetPage(page, report.code, report.isDemonstration ? paperWords.invented : report.place),
    css: sheetCss,
    body: body.html,
  };
}
