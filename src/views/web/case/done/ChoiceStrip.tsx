/** The strip of choices along the share of infested bees: white with dots waits, sky with lines tests, blue acts. */
import { useEffect, useId, useRef } from "react";
import type { ChoiceView, CountedColony } from "../../../model/index.ts";
import { Picture } from "../../pictures/Picture.tsx";
import { words } from "../../words.ts";

const width = 1080;

interface Props {
  readonly view: ChoiceView;
  readonly counted: readonly CountedColony[];
  readonly about: string | null;
}

export function ChoiceStrip({ view, counted, about }: Props) {
  const say = words.done;
  const id = useId();
  const x = (share: number) => (Math.min(share, view.end) / view.end) * width;
  const fills = { wait: `url(#${id}w)`, "test-first": `url(#${id}t)`, "act-now": "var(--data-blue)" } as const;
  const { here } = view;
  // On a narrow screen the strip slides: it begins where the colony stands.
  const strip = useRef<SVGSVGElement>(null);
  const place = x(here.value);
  useEffect(() => {
    const body = strip.current?.parentElement;
    if (body && body.scrollWidth > body.clientWidth) body.scrollLeft = place - body.clientWidth / 2;
  }, [place]);
  const others = counted.filter((each) => each.id !== about).slice(0, 6);
  const height = 146 + others.length * 20;
  const ticks = Array.from({ length: Math.round(view.end * 20) + 1 }, (_, index) => index / 20);
  const isRight = x(here.value) > width * 0.6;
  return (
    <Picture
      title={say.strip}
      aside={say.stripAside}
      className="strip"
      table={{ name: "choice", columns: view.table.columns, rows: view.table.rows }}
    >
      <svg
        ref={strip}
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
        role="img"
        aria-label={view.label}
      >
        <defs>
          <pattern id={`${id}w`} width="12" height="12" patternUnits="userSpaceOnUse">
            <rect width="12" height="12" fill="var(--sheet)" />
            <circle cx="3" cy="3" r="1" fill="var(--edge)" />
            <circle cx="9" cy="9" r="1" fill="var(--edge)" />
          </pattern>
          <pattern id={`${id}t`} width="7" height="7" patternUnits="userSpaceOnUse">
            <rect width="7" height="7" fill="var(--data-sky-tint)" />
            <path d="M3.5 0V7" stroke="var(--data-sky)" strokeWidth="1.5" />
          </pattern>
        </defs>
        {view.parts.map((part) => (
          <rect
            key={part.from}
            x={x(part.from)}
            y="46"
            width={x(part.to) - x(part.from)}
            height="66"
            fill={fills[part.best]}
          />
        ))}
        <rect x=".5" y="46" width={width - 1} height="66" fill="none" stroke="var(--ink)" />
        {view.parts.slice(1).map((part) => (
          <path key={part.from} d={`M${x(part.from)} 46V112`} stroke="var(--ink)" />
        ))}
        {view.parts.map((part) => (
          <PartWords key={part.from} part={part} left={x(part.from)} right={x(part.to)} />
        ))}
        <path d={`M${x(here.low)} 30H${Math.max(x(here.high), x(here.low) + 3)}`} stroke="var(--ink)" strokeWidth="8" />
        <path d={`M${x(here.value)} 20V118`} stroke="var(--ink)" strokeWidth="3" />
        <path d={`M${x(here.value) - 7} 20h14l-7 11z`} fill="var(--ink)" />
        <text x={x(here.value) + (isRight ? 7 : -7)} y="12" textAnchor={isRight ? "end" : "start"}>
          <tspan fontWeight="650">{here.says}</tspan>
          <tspan className="q" dx="12">
            {here.aside}
          </tspan>
        </text>
        {ticks.map((tick, index) => (
          <g key={tick}>
            <path d={`M${x(tick)} 112v${index % 2 ? 5 : 8}`} stroke="var(--ink)" />
            {index % 2 ? null : (
              <text
                className="q mono"
                x={x(tick)}
                y="134"
                textAnchor={index === 0 ? "start" : tick === view.end ? "end" : "middle"}
              >
                {Math.round(100 * tick)}
              </text>
            )}
          </g>
        ))}
        {others.map((colony, index) => {
          const y = 156 + index * 20;
          const { low, value, high } = colony.estimate;
          return (
            <g key={colony.id}>
              <path
                d={`M${x(low)} ${y}H${Math.max(x(high), x(low) + 3)}`}
                stroke={colony.positive > 0 ? "var(--bronze)" : "var(--clear)"}
                strokeWidth="7"
                strokeDasharray={colony.isLimited ? "5 3" : undefined}
              />
              <path d={`M${Math.max(1.5, x(value))} ${y - 8}v16`} stroke="var(--ink)" strokeWidth="3" />
              <CodeBeside code={colony.code} low={x(low)} high={x(high)} y={y} />
            </g>
          );
        })}
      </svg>
    </Picture>
  );
}

/** The code at the end of a bar, before it, or on it where neither has room. */
function CodeBeside({
  code,
  low,
  high,
  y,
}: {
  readonly code: string;
  readonly low: number;
  readonly high: number;
  readonly y: number;
}) {
  const room = code.length * 8 + 12;
  if (high + room < width)
    return (
      <text x={high + 10} y={y + 5}>
        {code}
      </text>
    );
  if (low > room)
    return (
      <text x={low - 10} y={y + 5} textAnchor="end">
        {code}
      </text>
    );
  return (
    <g>
      <rect x={low + 12} y={y - 9} width={room} height="18" fill="var(--ground)" />
      <text x={low + 18} y={y + 5}>
        {code}
      </text>
    </g>
  );
}

function PartWords({
  part,
  left,
  right,
}: {
  readonly part: ChoiceView["parts"][number];
  readonly left: number;
  readonly right: number;
}) {
  if (right - left < 112) return null;
  const ground = { wait: "var(--sheet)", "test-first": "var(--data-sky-tint)", "act-now": "var(--data-blue)" }[
    part.best
  ];
  const ink = part.best === "act-now" ? "var(--on-stain)" : "var(--ink)";
  return (
    <g>
      <rect x={left + 8} y="56" width="100" height="47" fill={ground} />
      <text className="part-name" x={left + 14} y="75" fontWeight="650" fill={ink}>
        {part.name}
      </text>
      <text className="part-range" x={left + 14} y="97" fill={ink}>
        {part.range}
      </text>
    </g>
  );
}
