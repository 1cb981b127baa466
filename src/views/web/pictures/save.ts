/** Saves a picture or a table as a file of the reader's own. */
import type { ExportTable } from "../../../transfer/index.ts";
import { saveText } from "../parts/save.ts";

/** The table as comma-separated values. */
export async function saveCsv(table: ExportTable): Promise<void> {
  // Fetched when it is asked for: reading and writing tables is a large part of the program, a picture is not.
  const { toCsv } = await import("../../../transfer/index.ts");
  saveText(`${table.name}.csv`, "text/csv", toCsv(table));
}

/** Attributes in which a picture names colours of the page. */
const painted = ["fill", "stroke"] as const;

/** The picture as a file that looks the same elsewhere: the colours of the page are written out. */
export function saveSvg(svg: SVGSVGElement, name: string): void {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  const originals = [svg, ...svg.querySelectorAll<SVGElement>("*")];
  const copies = [copy, ...copy.querySelectorAll<SVGElement>("*")];
  originals.forEach((original, index) => {
    const target = copies[index];
    if (!target) return;
    const style = getComputedStyle(original);
    for (const attribute of painted) {
      const colour = style.getPropertyValue(attribute);
      if (colour) target.setAttribute(attribute, colour);
    }
    if (original.tagName === "text") {
      target.setAttribute("font-family", style.fontFamily);
      target.setAttribute("font-size", style.fontSize);
      target.setAttribute("font-weight", style.fontWeight);
    }
  });
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  const { width, height } = svg.viewBox.baseVal;
  copy.setAttribute("width", String(width));
  copy.setAttribute("height", String(height));
  saveText(`${name}.svg`, "image/svg+xml", new XMLSerializer().serializeToString(copy));
}
