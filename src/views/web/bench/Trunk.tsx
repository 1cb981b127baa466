/** One trunk as drawn on the bench: empty, with mites, blotches, dark, or not to be read. */
import { useId } from "react";
import type { Trunk as TrunkReading } from "../../../journal/index.ts";
import { trunkShape as shape } from "./trunk-shape.ts";

interface Props {
  readonly reading: TrunkReading | null;
  readonly side: "left" | "right";
  /** The one that is asked now stands out by its outline. */
  readonly isAsked: boolean;
}

export function Trunk({ reading, side, isAsked }: Props) {
  const id = useId();
  const wall = isAsked ? "var(--stain)" : "var(--ink-2)";
  const width = isAsked ? 4.5 : 2.5;
  const hasMites = reading?.startsWith("mites") ?? false;
  const isDark = reading === "mites-dark" || reading === "dark-no-mite";
  const { mouth } = shape;
  return (
    <svg className="trunk" viewBox={shape.viewBox} aria-hidden="true">
      <g transform={side === "right" ? "translate(168 0) scale(-1 1)" : undefined}>
        <clipPath id={id}>
          <path d={shape.tube} />
        </clipPath>
        <path d={shape.tube} fill="var(--sheet)" />
        <g clipPath={`url(#${id})`}>
          {isDark ? <rect x="-22" y="150" width="212" height="270" fill="var(--bronze-mid)" /> : null}
          {reading === "mites-blotches" || reading === "mites-dark"
            ? shape.blotches.map((d) => <path key={d} d={d} fill="var(--bronze)" />)
            : null}
        </g>
        <path d={shape.rings} fill="none" stroke="var(--edge)" strokeWidth="1.3" />
        {reading === "unreadable" ? (
          <g clipPath={`url(#${id})`} stroke="var(--ink-2)" strokeWidth="5">
            {[60, 120, 180, 240, 300, 360, 420].map((y) => (
              <path key={y} d={`M-22 ${y}L190 ${y - 120}`} />
            ))}
          </g>
        ) : null}
        {hasMites
          ? shape.mites.map(({ cx, cy, turn }) => (
              <ellipse
                key={cy}
                cx={cx}
                cy={cy}
                rx="10"
                ry="6.5"
                transform={`rotate(${turn} ${cx} ${cy})`}
                fill="var(--ink)"
                stroke="var(--ground)"
                strokeWidth="2"
              />
            ))
          : null}
        <path d={shape.inner} fill="none" stroke={wall} strokeWidth={width} />
        <path d={shape.outer} fill="none" stroke={wall} strokeWidth={width} />
        <ellipse
          cx={mouth.cx}
          cy={mouth.cy}
          rx={mouth.rx}
          ry={mouth.ry}
          transform={`rotate(${mouth.turn} ${mouth.cx} ${mouth.cy})`}
          fill="var(--ground)"
          stroke={wall}
          strokeWidth={width}
        />
        <path d={shape.end} stroke={wall} strokeWidth={width} />
      </g>
    </svg>
  );
}
