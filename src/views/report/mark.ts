/** The 2-D code of a label: DataMatrix (ISO/IEC 16022) as SVG, so that it prints sharp at any size. */
import { datamatrix, drawingSVG } from "bwip-js/generic";
import type { Html } from "./html.ts";

/**
 * SVG of a DataMatrix symbol that holds `text`; the same text always stands beside it in letters.
 * @param text short ASCII, such as a specimen code
 */
export function matrixCode(text: string, className = "mark"): Html {
  const drawn = datamatrix({ bcid: "datamatrix", text, scale: 1, paddingwidth: 1, paddingheight: 1 }, drawingSVG());
  const labelled = drawn.replace(
    /<svg /,
    `<svg class="${className}" role="img" aria-label="2-D code: ${text.replace(/[^\w-]/g, "")}" shape-rendering="crispEdges" `,
  );
  return { html: labelled };
}
