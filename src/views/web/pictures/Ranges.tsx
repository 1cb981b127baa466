/** Intervals one under the other: bars with a tick at the estimate, and lines to read them against. */
import type { RangesPicture } from "../../model/index.ts";
import { Below, placeOn } from "./scale.tsx";

const [left, right, rowHeight, width] = [196, 468, 30, 480];

export function Ranges({ picture }: { readonly picture: RangesPicture }) {
  const { axis, rows, lines, label } = picture;
  const x = placeOn(axis, left, right);
  const top = lines.length > 0 ? 24 : 6;
  const bottom = top + rows.length * rowHeight;
  return (
    <svg viewBox={`0 0 ${width} ${bottom + 48}`} width={width} height={bottom + 48} role="img" aria-label={label}>
      <Below axis={axis} left={left} right={right} y={bottom} />
      {rows.map((row, index) => {
        const y = top + index * rowHeight;
        const colour = (row.value ?? row.low ?? 0) === 0 ? "var(--clear)" : "var(--bronze)";
        return (
          <g key={row.name}>
            <text x="0" y={y + 19}>
              {row.name}
            </text>
            {row.low === null || row.high === null ? null : (
              <rect x={x(row.low)} y={y + 9} width={Math.max(2, x(row.high) - x(row.low))} height="12" fill={colour} />
            )}
            {row.value === null ? null : (
              <path d={`M${x(row.value)} ${y + 4}v22`} stroke="var(--ink)" strokeWidth="3" />
            )}
          </g>
        );
      })}
      {lines.map(({ at, says }) => (
        <g key={says}>
          <path d={`M${x(at)} ${top - 6}V${bottom}`} stroke="var(--ink)" strokeDasharray="4 3" />
          <text className="q" x={x(at)} y={top - 10} textAnchor={x(at) > (left + right) / 2 ? "end" : "start"}>
            {says}
          </text>
        </g>
      ))}
    </svg>
  );
}
