/** What all drawings of findings share: a small sheet, one stroke, a quiet fill. */
import type { ReactNode } from "react";

/** One drawing of a strip, on a sheet of 96 by 72. */
export const Figure = ({ children }: { readonly children: ReactNode }) => (
  <svg viewBox="0 0 96 72" width="96" height="72" aria-hidden="true" className="figure">
    {children}
  </svg>
);

/** The same on both sides of a bee. */
export const BothSides = ({ children }: { readonly children: ReactNode }) => (
  <>
    {children}
    <g transform="translate(96 0) scale(-1 1)">{children}</g>
  </>
);

/** Corners of a cell seen from above. */
export const cell = (x: number, y: number, size: number): string =>
  Array.from({ length: 6 }, (_, corner) => {
    const angle = (Math.PI / 3) * corner + Math.PI / 6;
    return `${(x + size * Math.cos(angle)).toFixed(1)},${(y + size * Math.sin(angle)).toFixed(1)}`;
  }).join(" ");
