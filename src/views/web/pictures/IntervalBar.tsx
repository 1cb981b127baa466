/** An interval as a bar with a tick at its estimate, bands behind and their edges drawn through. */
import { useId } from "react";
import type { Estimate } from "../../../units/index.ts";

interface Band {
  readonly from: number;
  readonly to: number | null;
  readonly means: string;
}

export interface Scale {
  readonly width: number;
  /** Bees in 100 at the right end. */
  readonly end: number;
  readonly bands: readonly Band[];
}

const shades = ["var(--band-1)", "var(--band-1)", "var(--band-2)", "var(--band-3)", "var(--band-4)"] as const;

const at = ({ width, end }: Scale, percent: number): number => (Math.min(percent, end) / end) * width;

/** The edges of the bands, each once. */
export const edgesOf = (bands: readonly Band[]): readonly number[] =>
  [...new Set(bands.flatMap((band) => [band.from, ...(band.to === null ? [] : [band.to])]))].sort((a, b) => a - b);

function Bands({ scale, top, height }: { readonly scale: Scale; readonly top: number; readonly height: number }) {
  return scale.bands.map((band, index) => (
    <rect
      key={band.from}
      x={at(scale, band.from)}
      y={top}
      width={at(scale, band.to ?? scale.end) - at(scale, band.from)}
      height={height}
      fill={shades[index] ?? "var(--band-4)"}
    />
  ));
}

interface BarProps {
  readonly scale: Scale;
  readonly estimate: Estimate | null;
  readonly isInfested: boolean;
  readonly isLimited: boolean;
}

export function IntervalBar({ scale, estimate, isInfested, isLimited }: BarProps) {
  const pattern = useId();
  const colour = isInfested ? "var(--bronze)" : "var(--clear)";
  const height = 52;
  return (
    <svg className="interval" viewBox={`0 0 ${scale.width} ${height}`} preserveAspectRatio="none" aria-hidden="true">
      <defs>
        <pattern id={pattern} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="6" height="6" fill="var(--sheet)" />
          <path d="M0 0V6" stroke={colour} strokeWidth="4" />
        </pattern>
      </defs>
      <Bands scale={scale} top={0} height={height} />
      {estimate ? (
        <rect
          x={at(scale, 100 * estimate.low)}
          y="20"
          width={Math.max(2, at(scale, 100 * estimate.high) - at(scale, 100 * estimate.low))}
          height="12"
          fill={isLimited ? `url(#${pattern})` : colour}
          stroke={colour}
          strokeWidth="1.5"
        />
      ) : null}
      {edgesOf(scale.bands)
        .filter((edge) => edge > 0 && edge < scale.end)
        .map((edge) => (
          <path key={edge} d={`M${at(scale, edge)} 0V${height}`} stroke="var(--ink)" strokeWidth="1" />
        ))}
      {estimate ? (
        <path d={`M${Math.max(1.5, at(scale, 100 * estimate.value))} 13v26`} stroke="var(--ink)" strokeWidth="3" />
      ) : null}
    </svg>
  );
}

/** The head of the scale: figures at the edges, classes where they have room; all classes stand in words below. */
export function IntervalHead({ scale }: { readonly scale: Scale }) {
  const edges = [...edgesOf(scale.bands).filter((edge) => edge < scale.end), scale.end];
  return (
    <svg className="interval-head" viewBox={`0 0 ${scale.width} 52`} aria-hidden="true">
      <Bands scale={scale} top={22} height={30} />
      {edges.map((edge) => (
        <text
          key={edge}
          className="q mono"
          x={at(scale, edge)}
          y="14"
          textAnchor={edge === 0 ? "start" : edge === scale.end ? "end" : "middle"}
        >
          {edge}
        </text>
      ))}
      {edges
        .filter((edge) => edge > 0 && edge < scale.end)
        .map((edge) => (
          <path key={edge} d={`M${at(scale, edge)} 22V52`} stroke="var(--ink)" />
        ))}
      {scale.bands
        .filter((band) => at(scale, band.to ?? scale.end) - at(scale, band.from) >= 60)
        .map((band) => {
          const middle = (at(scale, band.from) + at(scale, band.to ?? scale.end)) / 2;
          const [one = "", ...rest] = splitInTwo(band.means);
          return (
            <text key={band.from} className="band-word" x={middle} y={rest.length > 0 ? 35 : 41} textAnchor="middle">
              <tspan x={middle}>{one}</tspan>
              {rest.map((line) => (
                <tspan key={line} x={middle} dy="13">
                  {line}
                </tspan>
              ))}
            </text>
          );
        })}
    </svg>
  );
}

/** Two lines for words too long for their band. */
function splitInTwo(text: string): readonly string[] {
  const space = text.lastIndexOf(" ");
  return text.length > 8 && space > 0 ? [text.slice(0, space), text.slice(space + 1)] : [text];
}
