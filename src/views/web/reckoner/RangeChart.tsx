/** One count, three methods: bars with a tick at the estimate, a line drawn through when one was given. */
import type { EstimateView } from "../../model/index.ts";

const [left, right] = [70, 424];

export function RangeChart({ view }: { readonly view: EstimateView }) {
  const x = (percent: number) => left + (Math.min(percent, view.end) / view.end) * (right - left);
  const bottom = 12 + view.rows.length * 34;
  const step = view.end > 50 ? 20 : view.end > 20 ? 10 : 5;
  const ticks = Array.from({ length: Math.floor(view.end / step) + 1 }, (_, index) => index * step);
  const colour = view.positive > 0 ? "var(--bronze)" : "var(--clear)";
  return (
    <svg viewBox={`0 0 440 ${bottom + 30}`} width="440" height={bottom + 30} role="img" aria-label={view.label}>
      {ticks.map((tick) => (
        <g key={tick}>
          <path d={`M${x(tick)} ${bottom}v6`} stroke="var(--edge)" />
          <text className="q mono" x={x(tick)} y={bottom + 22} textAnchor="middle">
            {tick}
          </text>
        </g>
      ))}
      <path d={`M${left} ${bottom}H${right}`} stroke="var(--edge)" />
      {view.rows.map((row, index) => {
        const y = 12 + index * 34;
        const { low, value, high } = row.estimate;
        return (
          <g key={row.method}>
            <text x="0" y={y + 14}>
              {row.name}
            </text>
            <rect
              x={x(100 * low)}
              y={y + 4}
              width={Math.max(2, x(100 * high) - x(100 * low))}
              height="12"
              fill={colour}
            />
            <path d={`M${x(100 * value)} ${y - 2}v24`} stroke="var(--ink)" strokeWidth="3" />
          </g>
        );
      })}
      {view.line === null ? null : (
        <path d={`M${x(view.line)} 0V${bottom}`} stroke="var(--ink)" strokeDasharray="4 3" />
      )}
    </svg>
  );
}
