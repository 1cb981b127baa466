/** The ranked causes as a picture of its own: black on white, no colour needed, with its text inside. */
import type { CauseView } from "../../../model/index.ts";
import { dotPlaces } from "./Dots.tsx";

const [rowHeight, left, width, right] = [78, 110, 200, 30];

/** SVG text of the causes given, in their order. */
export function causesSvg(causes: readonly CauseView[], name: string): string {
  const [all, high] = [left + width + right + 330, causes.length * rowHeight + 20];
  const rows = causes.map((cause, index) => row(cause, index * rowHeight + 10));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${all}" height="${high}" viewBox="0 0 ${all} ${high}" font-family="sans-serif" font-size="13">`,
    `<title>${escaped(name)}</title>`,
    `<rect width="${all}" height="${high}" fill="#fff"/>`,
    ...rows,
    "</svg>\n",
  ].join("\n");
}

function row(cause: CauseView, top: number): string {
  const ticks = Array.from({ length: 11 }, (_, index) => `M${index * 20} 53v${index % 5 === 0 ? 7 : 4}`).join("");
  const dots = (cause.dots ? dotPlaces(cause.dots) : [])
    .map(({ x, y, size }) => `<circle cx="${x.toFixed(1)}" cy="${y.toFixed(1)}" r="${size}"/>`)
    .join("");
  const [low, high] = [cause.low * width, Math.max(cause.high * width, cause.low * width + 2)];
  return [
    `<g transform="translate(0 ${top})">`,
    `<text x="0" y="30" font-size="22">${escaped(cause.number)}</text><text x="0" y="48">${escaped(cause.range)}</text><text x="0" y="64">${escaped(cause.word)}</text>`,
    `<g transform="translate(${left} 0)">${dots}<path d="M0 53H${width}${ticks}" fill="none" stroke="#777"/><path d="M${low.toFixed(1)} 53H${high.toFixed(1)}" stroke="#000" stroke-width="3"/><path d="M${(cause.posterior * width).toFixed(1)} 50v12" stroke="#000" stroke-width="2"/></g>`,
    `<text x="${left + width + right}" y="58" font-weight="bold">${escaped(cause.term)}</text>`,
    "</g>",
  ].join("");
}

const escaped = (text: string): string => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
