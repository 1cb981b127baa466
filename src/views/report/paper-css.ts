/** The look of paper: black on white, sizes in millimetres and points; what colour said is said by word, shape and pattern. */
import type { LabelStock } from "../model/index.ts";

const faces = `
* { box-sizing: border-box; margin: 0; padding: 0; }
html, :host { background: #fff; color: #000; font: 9.5pt/13pt "Atkinson Hyperlegible Next", sans-serif; font-variant-numeric: tabular-nums; }
b { font-weight: 650; }
.c, time { font-family: "Atkinson Hyperlegible Mono", monospace; font-size: .95em; }
svg { display: block; }
svg.defs { position: absolute; }
ul, ol { list-style: none; }
`;

/** Page numbers stand in the margin of every printed page; `code` at its left. */
const pageBox = (page: "A4" | "Letter", code: string, middle: string): string => `
@page { size: ${page}; margin: 14mm 16mm 16mm;
  @bottom-left { content: "${code}"; font: 8pt "Atkinson Hyperlegible Mono", monospace; }
  @bottom-center { content: "${middle}"; font: 8pt "Atkinson Hyperlegible Next", sans-serif; }
  @bottom-right { content: "Page " counter(page) " of " counter(pages); font: 8pt "Atkinson Hyperlegible Next", sans-serif; } }
`;

/** Text that may stand in quotes in a style. */
const quoted = (text: string): string => text.replace(/["\\\n]/g, " ");

/** The page of the report and the cards: its size, and in its margins the code, what it is about and page numbers. */
export const sheetPage = (page: "A4" | "Letter", code: string, middle: string): string =>
  pageBox(page, quoted(code), quoted(middle));

/** Style of the report and the cards. */
export const sheetCss = `${faces}
.top { display: grid; grid-template-columns: 1fr 62mm; column-gap: 6mm; align-items: start; }
.top h1 { font: 650 19pt/22pt "Atkinson Hyperlegible Next", sans-serif; margin-top: 1mm; }
.top p { margin-top: 1.5mm; }
.label { font-size: 8.5pt; line-height: 11.5pt; padding: 2mm 2.5mm 2.5mm; border: .3mm solid #000; display: grid; grid-template-columns: 1fr auto; column-gap: 2mm; }
.label .code { font-family: "Atkinson Hyperlegible Mono", monospace; font-weight: 650; }
.label .mark { grid-area: 1 / 2 / span 3; width: 13mm; height: 13mm; }
.label .row { grid-column: 1 / -1; display: flex; justify-content: space-between; gap: 2mm; }
section { border-top: .3mm solid #000; margin-top: 4mm; padding-top: 1.6mm; display: grid; grid-template-columns: 27mm minmax(0, 1fr); column-gap: 3mm; break-inside: avoid; }
section.long { break-inside: auto; }
.long :is(.own, li), .long p.small { break-inside: avoid; }
h2 { font: 650 9.5pt/13pt "Atkinson Hyperlegible Next", sans-serif; }
h2:has(span) { padding-left: 6mm; text-indent: -6mm; }
h2 span { text-indent: 0; font: 9pt/13pt "Atkinson Hyperlegible Mono", monospace; display: inline-block; width: 6mm; }
.say { font: 400 16pt/20.5pt "Atkinson Hyperlegible Next", sans-serif; }
.say b { font-weight: 680; }
.ans { display: grid; grid-template-columns: 1fr 50mm; column-gap: 5mm; }
.ans.alone { grid-template-columns: 1fr; }
.key { font-size: 8pt; line-height: 11pt; margin-top: 1.5mm; }
table { border-collapse: collapse; width: 100%; font-size: 8.5pt; line-height: 11.5pt; }
th { text-align: left; font-weight: 400; vertical-align: bottom; padding: 0 2.2mm .6mm 0; border-bottom: .3mm solid #000; }
td { padding: .5mm 2.2mm .5mm 0; border-bottom: .12mm solid #000; vertical-align: middle; }
td { white-space: nowrap; }
td.wrap { white-space: normal; }
.room { width: 13mm; }
table + table { margin-top: 3mm; }
td.room { border-left: .12mm solid #000; }
.r { text-align: right; }
.small { font-size: 8.5pt; line-height: 11.5pt; margin-top: 1.2mm; }
.do li { display: grid; grid-template-columns: 39mm 1fr; padding: .3mm 0; }
.ranked { margin: 1mm 0 2mm; }
.steps li { padding: .6mm 0 .6mm 6mm; position: relative; }
.steps li::before { content: ""; position: absolute; left: 0; top: 1.2mm; width: 3.2mm; height: 3.2mm; border: .3mm solid #000; }
.fine { font-size: 8pt; line-height: 11pt; }
@media screen and (max-width: 819px) {
  .top, section, .ans { grid-template-columns: minmax(0, 1fr); row-gap: 2mm; }
  .do li { grid-template-columns: minmax(0, 1fr); }
  td { white-space: normal; }
  th, td { padding-right: 1.2mm; }
  .specimens :is(th, td):last-child { display: none; }
}
.invented { border: .5mm solid #000; padding: 1mm 2mm; margin-bottom: 3mm; font-weight: 650; }
`;

/** A gap in millimetres to a hundredth; never below 0 by rounding. */
const gap = (millimetres: number): string => Math.max(0, millimetres).toFixed(2);

/** The page of a sheet of labels: no margin, the stock says where ink may be. */
export const labelPage = (stock: LabelStock): string => `@page { size: ${stock.page}; margin: 0; }`;

/** Style of a sheet of labels: the geometry of its stock; ink stays 1.2 mm inside the cut. */
export const labelCss = (stock: LabelStock): string => `${faces}
.page { position: relative; width: ${stock.page === "A4" ? "210mm" : "215.9mm"}; height: ${stock.page === "A4" ? "296.8mm" : "279.2mm"}; overflow: hidden; break-after: page; }
.page:last-child { break-after: auto; }
.page ul { position: absolute; left: ${stock.left}mm; top: ${stock.top}mm; display: grid; grid-template-columns: repeat(${stock.columns}, ${stock.width}mm); grid-auto-rows: ${stock.height}mm; column-gap: ${gap(stock.pitchX - stock.width)}mm; row-gap: ${gap(stock.pitchY - stock.height)}mm; }
.page li { padding: 1.2mm; min-width: 0; }
.vial { height: 100%; border: .25mm solid #000; display: grid; grid-template-columns: 1fr auto; padding: .6mm 1mm 0 1.3mm; column-gap: 1mm; ${stock.height < 15 ? "font-size: 6pt; line-height: 6pt; align-content: start; padding-top: .4mm;" : "font-size: 7pt; line-height: 8.6pt;"} white-space: nowrap; overflow: hidden; }
.vial .k { font: 700 ${stock.height < 15 ? "7.5pt/7.4pt" : "8pt/9.6pt"} "Atkinson Hyperlegible Mono", monospace; letter-spacing: -.02em; }
.vial .mark { grid-area: 1 / 2 / span ${stock.height < 15 ? 4 : 3}; width: ${stock.height < 15 ? "8.4mm" : "9.6mm"}; height: ${stock.height < 15 ? "8.4mm" : "9.6mm"}; }
.vial .col { font-weight: 650; }
.vial .wide { grid-column: ${stock.height < 15 ? "1" : "1 / -1"}; display: flex; justify-content: space-between; }
.slug { position: absolute; left: 5.9mm; right: 5.9mm; display: flex; justify-content: space-between; font-size: 7pt; line-height: 9pt; }
.slug.head { top: 3.6mm; } .slug.feet { bottom: 3.6mm; }
`;
