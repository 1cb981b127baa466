/** Curves over one scale: regions behind, lines to read against, points told in words, names above. */
import type { CurvesPicture, Series } from "../../model/index.ts";
import { AtLeft, Below, placeOn } from "./scale.tsx";

const [left, right, height, width] = [54, 468, 220, 480];
const legendRow = 20;
const inks = ["var(--data-black)", "var(--data-orange)", "var(--data-blue)", "var(--data-green)"] as const;
const dashes = { full: undefined, dashed: "7 4", dotted: "2 4", steps: undefined, points: undefined } as const;

export function Curves({ picture }: { readonly picture: CurvesPicture }) {
  const { x: xAxis, y: yAxis, series, areas = [], uprights = [], marks = [], lines = [], label } = picture;
  const named = series.length > 1 ? series : [];
  const legend = named.length + areas.length;
  const top = 30 + legend * legendRow;
  const bottom = top + height;
  const x = placeOn(xAxis, left, right);
  const y = placeOn(yAxis, bottom, top);
  return (
    <svg viewBox={`0 0 ${width} ${bottom + 48}`} width={width} height={bottom + 48} role="img" aria-label={label}>
      {named.map((each, index) => (
        <g key={each.name} transform={`translate(0 ${14 + index * legendRow})`}>
          <Sample series={each} ink={inkOf(index)} />
          <text x="44" y="4">
            {each.name}
          </text>
        </g>
      ))}
      {areas.map(({ says, tone, edge }, index) => (
        <g key={says}>
          <rect x="0" y={6 + (named.length + index) * legendRow} width="34" height="12" fill={`var(--band-${tone})`} />
          <text x="44" y={18 + (named.length + index) * legendRow}>
            {says}
          </text>
          <path d={areaPath(edge, x, y)} fill={`var(--band-${tone})`} />
        </g>
      ))}
      <AtLeft axis={yAxis} x={left} top={top} bottom={bottom} />
      <Below axis={xAxis} left={left} right={right} y={bottom} />
      {uprights.map(({ x: at, low, high }) => (
        <path
          key={at}
          d={`M${x(at) - 4} ${y(high)}h8M${x(at)} ${y(high)}V${y(low)}M${x(at) - 4} ${y(low)}h8`}
          fill="none"
          stroke="var(--edge)"
          strokeWidth="2"
        />
      ))}
      {series.map((each, index) =>
        each.style === "points" ? (
          each.points.map(([px, py], place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: equal points are told apart by their place alone
            <circle key={place} cx={x(px)} cy={y(py)} r="3.5" fill={inkOf(index)} />
          ))
        ) : (
          <path
            key={each.name}
            d={linePath(each, x, y)}
            fill="none"
            stroke={inkOf(index)}
            strokeWidth="2.2"
            strokeDasharray={dashes[each.style]}
          />
        ),
      )}
      {lines.map((line) =>
        "x" in line ? (
          <g key={line.says}>
            <path d={`M${x(line.x)} ${top}V${bottom}`} stroke="var(--ink)" strokeDasharray="4 3" />
            <text className="q on-line" x={x(line.x) + 6} y={top + 12}>
              {line.says}
            </text>
          </g>
        ) : (
          <g key={line.says}>
            <path d={`M${left} ${y(line.y)}H${right}`} stroke="var(--ink)" strokeDasharray="4 3" />
            <text className="q on-line" x={right} y={y(line.y) - 6} textAnchor="end">
              {line.says}
            </text>
          </g>
        ),
      )}
      {marks.map((mark) => {
        const toLeft = x(mark.x) > (left + right) / 2;
        return (
          <g key={`${mark.x} ${mark.y} ${mark.says}`}>
            <circle cx={x(mark.x)} cy={y(mark.y)} r="4.5" fill="var(--ink)" />
            <text
              x={x(mark.x) + (toLeft ? -10 : 10)}
              y={Math.max(top + 14, y(mark.y) - 10)}
              textAnchor={toLeft ? "end" : "start"}
              fontWeight="600"
              className="on-line"
            >
              {mark.says}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

const inkOf = (index: number): string => inks[index % inks.length] ?? "var(--ink)";

function Sample({ series: { style }, ink }: { readonly series: Series; readonly ink: string }) {
  if (style === "points") return <circle cx="17" cy="0" r="3.5" fill={ink} />;
  return <path d="M0 0H34" stroke={ink} strokeWidth="2.2" strokeDasharray={dashes[style]} />;
}

type Place = (value: number) => number;
const at = (x: number, y: number): string => `${x.toFixed(1)} ${y.toFixed(1)}`;

/** A gap in the points is a gap in the line only where a value cannot be drawn. */
function linePath({ points, style }: Series, x: Place, y: Place): string {
  return points
    .map(([px, py], index) => {
      if (index === 0) return `M${at(x(px), y(py))}`;
      return style === "steps" ? `H${x(px).toFixed(1)}V${y(py).toFixed(1)}` : `L${at(x(px), y(py))}`;
    })
    .join("");
}

function areaPath(edge: readonly (readonly [number, number, number])[], x: Place, y: Place): string {
  const upper = edge.map(([px, , high]) => at(x(px), y(high)));
  const lower = edge.map(([px, low]) => at(x(px), y(low))).reverse();
  return `M${[...upper, ...lower].join("L")}z`;
}
