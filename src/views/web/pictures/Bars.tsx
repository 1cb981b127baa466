/** Counts or shares by class, a bar for each series. */
import type { BarsPicture } from "../../model/index.ts";
import { AtLeft, placeOn } from "./scale.tsx";

const [left, right, height, width] = [54, 468, 200, 480];
const legendRow = 20;
const fills = ["var(--data-blue)", "var(--data-orange)", "var(--data-black)"] as const;

export function Bars({ picture }: { readonly picture: BarsPicture }) {
  const { y: yAxis, classes, series, classesSay, label } = picture;
  const named = series.length > 1 ? series : [];
  const top = 30 + named.length * legendRow;
  const bottom = top + height;
  const y = placeOn(yAxis, bottom, top);
  // A value below 0 hangs from the line of 0.
  const base = y(0);
  const slot = (right - left) / Math.max(1, classes.length);
  const bar = Math.min(40, (slot * 0.8) / Math.max(1, series.length));
  const every = Math.ceil(classes.length / 20);
  return (
    <svg viewBox={`0 0 ${width} ${bottom + 48}`} width={width} height={bottom + 48} role="img" aria-label={label}>
      {named.map(({ name }, index) => (
        <g key={name}>
          <rect x="0" y={6 + index * legendRow} width="34" height="12" fill={fillOf(index)} />
          <text x="44" y={17 + index * legendRow}>
            {name}
          </text>
        </g>
      ))}
      <AtLeft axis={yAxis} x={left} top={top} bottom={bottom} />
      <path d={`M${left} ${base}H${right}`} stroke="var(--edge)" />
      {classes.map((each, index) => {
        const middle = left + (index + 0.5) * slot;
        return (
          <g key={each}>
            {series.map(({ name, values }, of) => {
              const value = values[index] ?? null;
              if (value === null) return null;
              const start = middle - (bar * series.length) / 2 + of * bar;
              return (
                <rect
                  key={name}
                  x={start}
                  y={Math.min(base, y(value))}
                  width={bar - 1}
                  height={Math.abs(base - y(value))}
                  fill={fillOf(of)}
                />
              );
            })}
            {index % every === 0 ? (
              <text className="q mono" x={middle} y={bottom + 20} textAnchor="middle">
                {each}
              </text>
            ) : null}
          </g>
        );
      })}
      <text className="q" x={right} y={bottom + 40} textAnchor="end">
        {classesSay}
      </text>
    </svg>
  );
}

const fillOf = (index: number): string => fills[index % fills.length] ?? "var(--bronze)";
