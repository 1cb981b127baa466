/** The year beneath a fan: warmth, days too cool for menthol, nectar, supers. */
import { type Day, daysBetween } from "../../../units/index.ts";
import type { SeasonView, SeasonYear } from "../../model/index.ts";
import { seasonWords } from "../../words/index.ts";
import { type FanFrame, point } from "./frame.ts";

/** Warmth, nectar and supers, on the same days. */
export function Year({
  year,
  supers,
  view,
  frame,
  cool,
}: {
  readonly year: SeasonYear | null;
  readonly supers: readonly Span[];
  readonly view: Pick<SeasonView, "from" | "to">;
  readonly frame: FanFrame;
  readonly cool: string;
}) {
  const say = seasonWords;
  const { left, right, bottom, isNarrow, x } = frame;
  if (!year || year.days.length === 0) return null;
  const warmthTop = bottom + (isNarrow ? 50 : 34);
  const warmthBottom = warmthTop + 40;
  const flowBottom = warmthBottom + (isNarrow ? 46 : 34);
  const nameOf = (beside: number, above: number) => (isNarrow ? { x: left, y: above } : { x: 0, y: beside });
  const [least, most] = [
    Math.min(0, ...year.days.map(({ celsius }) => celsius)),
    Math.max(20, ...year.days.map(({ celsius }) => celsius)),
  ];
  const warm = (celsius: number) => warmthBottom - ((celsius - least) / (most - least)) * (warmthBottom - warmthTop);
  const line = year.days.map(({ date, celsius }) => point(x(date), warm(celsius))).join("L");
  const flow = year.days.map(({ date, flow: height }) => point(x(date), flowBottom - 24 * height)).join("L");
  const coolSpans = spansOf(year);
  const [widest] = [...coolSpans].sort((one, other) => lengthOf(other) - lengthOf(one));
  const shown = supers.filter(({ from, to }) => to >= view.from && from <= view.to);
  return (
    <g>
      <text {...nameOf(warmthTop + 14, warmthTop - 5)} fontWeight="600">
        {say.rows.warmth}
      </text>
      {coolSpans.map(({ from, to }) => (
        <rect
          key={from}
          x={x(from)}
          y={warmthTop}
          width={Math.max(2, x(to) - x(from))}
          height={warmthBottom - warmthTop}
          fill={`url(#${cool})`}
          fillOpacity=".45"
        />
      ))}
      {widest && x(widest.to) - x(widest.from) > 240 ? (
        <text className="on-line q" x={(x(widest.from) + x(widest.to)) / 2} y={warmthTop + 12} textAnchor="middle">
          {say.cool}
        </text>
      ) : null}
      <path d={`M${left} ${warm(0)}H${right}`} stroke="var(--rule)" />
      <text className="q mono" x={left - 6} y={warm(0) + 4} textAnchor="end">
        0
      </text>
      <path d={`M${line}`} fill="none" stroke="var(--ink)" strokeWidth="2" />
      <text {...nameOf(flowBottom - 8, flowBottom - 29)} fontWeight="600">
        {say.rows.forage}
      </text>
      <path
        d={`M${x(year.days[0]?.date ?? view.from)} ${flowBottom}L${flow}L${x(year.days.at(-1)?.date ?? view.to)} ${flowBottom}z`}
        fill="var(--band-3)"
        stroke="var(--edge)"
      />
      {shown.map(({ from, to }) => (
        <g key={from}>
          <rect
            x={x(from)}
            y={flowBottom + 5}
            width={Math.max(2, x(to) - x(from))}
            height="16"
            fill="var(--band-1)"
            stroke="var(--edge)"
          />
          <text className="q" x={x(from) + 4} y={flowBottom + 17}>
            {say.rows.supers}
          </text>
        </g>
      ))}
    </g>
  );
}

interface Span {
  readonly from: Day;
  readonly to: Day;
}

const lengthOf = ({ from, to }: Span): number => daysBetween(from, to);

/** Runs of days too cool for menthol. */
function spansOf({ days }: SeasonYear): readonly Span[] {
  const spans: Span[] = [];
  days.forEach(({ date, isCool }, place) => {
    if (!isCool) return;
    const last = spans.at(-1);
    if (last && days[place - 1]?.isCool) spans[spans.length - 1] = { from: last.from, to: date };
    else spans.push({ from: date, to: date });
  });
  return spans;
}
