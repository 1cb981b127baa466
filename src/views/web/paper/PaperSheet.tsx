/** A paper on the screen as it prints: in a tree of its own, so that neither style reaches the other. */
import { useEffect, useRef } from "react";
import type { Paper } from "../../report/index.ts";

/** Where a sheet ends: the paper size on the screen, and only the paper when it is printed. */
const printCss = `
@media print { html, body { background: #fff; } }
`;

interface Props {
  readonly paper: Paper;
  readonly size: "A4" | "Letter";
  /** The paper fills its sheet by itself: no margin. */
  readonly isWhole: boolean;
}

export function PaperSheet({ paper, size, isWhole }: Props) {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!host.current) return;
    const root = host.current.shadowRoot ?? host.current.attachShadow({ mode: "open" });
    const style = new CSSStyleSheet();
    style.replaceSync(paper.css);
    root.adoptedStyleSheets = [style];
    // The papers escape every value they print.
    root.innerHTML = paper.body;
  }, [paper]);
  useEffect(() => {
    const page = new CSSStyleSheet();
    page.replaceSync(paper.pageCss + printCss);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, page];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== page);
    };
  }, [paper]);
  return <div className={`paper-sheet ${size} ${isWhole ? "whole" : ""}`} ref={host} />;
}
