/** The year on one axis: daily highs, forage, what bars the control and its windows, what is to be done. */
import { useId } from "react";
import { addDays, type Day, daysBetween, monthOf, yearOf } from "../../../../units/index.ts";
import type { YearSpan, YearView } from "../../../model/index.ts";
import { shownDegrees, useUnits } from "../../parts/units.ts";
import { Picture } from "../../pictures/Picture.tsx";
import { words } from "../../words.ts";

const [left, right] = [118, 1080];

interface Props {
  readonly view: YearView;
  readonly today: Day;
  readonly place: string;
  /** Short word for what bars are about; null where no label limits the days. */
  readonly control: string | null;
}

export function YearPicture({ view, today, place, control }: Props) {
  const say = words.done;
  const id = useId();
  const all = Math.max(1, daysBetween(view.from, view.to));
  const x = (day: Day) => left + (Math.min(Math.max(daysBetween(view.from, day), 0), all) / all) * (right - left);
  const lanes = control ? laneSpans(view.bars, x) : [];
  const barsTop = 160;
  const doTop = barsTop + (control ? Math.max(1, lanes.length) * 17 + 18 : 0) + 12;
  const height = doTop + 66;
  return (
    <Picture
      title={say.year({ place })}
      aside={say.yearAside({ measured: view.isMeasured })}
      className="year"
      table={{ name: "year", columns: view.table.columns, rows: view.table.rows }}
    >
      <svg viewBox={`0 0 1080 ${height}`} width="1080" height={height} role="img" aria-label={view.label}>
        <defs>
          <pattern id={id} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path d="M0 0V7" stroke="var(--edge)" strokeWidth="2" />
          </pattern>
        </defs>
        <Months view={view} x={x} height={height} />
        <Highs view={view} x={x} />
        <Flows spans={view.flows} x={x} />
        {control ? (
          <>
            <text x="0" y={barsTop + 13} fontWeight="600">
              {say.bars({ control })}
            </text>
            {lanes.map((lane, index) =>
              lane.map((span) => (
                <Bar key={`${span.from}${span.says}`} span={span} x={x} y={barsTop + index * 17} pattern={id} />
              )),
            )}
            {view.windows.map((window) => (
              <Window
                key={window.from}
                span={window}
                x={x}
                top={barsTop}
                height={Math.max(1, lanes.length) * 17 + 14}
              />
            ))}
          </>
        ) : null}
        <Steps view={view} x={x} top={doTop} />
        <path d={`M${x(today)} 18V${height}`} stroke="var(--ink)" strokeWidth="1.5" strokeDasharray="2 3" />
        <text x={x(today) + 6} y={height - 4} fontWeight="600">
          {say.today({ day: today })}
        </text>
      </svg>
    </Picture>
  );
}

type At = (day: Day) => number;

function Months({ view, x, height }: { readonly view: YearView; readonly x: At; readonly height: number }) {
  const first = `${view.from.slice(0, 7)}-01`;
  const months: Day[] = [];
  for (let day = first; day <= view.to; day = `${addDays(day, 32).slice(0, 7)}-01`) months.push(day);
  return months.map((month, index) => {
    const at = x(month);
    const next = months[index + 1];
    const room = (next ? x(next) : right) - at;
    const isNewYear = monthOf(month) === 1;
    return (
      <g key={month}>
        <path d={`M${at} 18V${height - 18}`} stroke="var(--rule)" />
        {room > 28 ? (
          <text className="q" x={at + 6} y="12">
            {words.apiaries.monthShort({ month: monthOf(month) })}
            {isNewYear ? ` ${yearOf(month)}` : ""}
          </text>
        ) : null}
      </g>
    );
  });
}

function Highs({ view, x }: { readonly view: YearView; readonly x: At }) {
  const say = words.done;
  const units = useUnits();
  const [top, bottom] = [24, 92];
  const values = view.line.map((point) => point.celsius);
  const [least, most] = [Math.min(0, ...values), Math.max(25, ...values)];
  const y = (celsius: number) => bottom - ((celsius - least) / (most - least)) * (bottom - top);
  const path = view.line
    .map((point, index) => `${index ? "L" : "M"}${x(point.date).toFixed(1)} ${y(point.celsius).toFixed(1)}`)
    .join("");
  const zero = shownDegrees(0, units);
  const limit = view.limits ? shownDegrees(view.limits.least, units) : null;
  return (
    <g>
      <text x="0" y="40" fontWeight="600">
        {view.isHigh ? say.high : say.highMean}
      </text>
      <text className="q" x="0" y="58">
        {zero.unit}
      </text>
      {view.limits && limit ? (
        <>
          <path d={`M${left} ${y(view.limits.least)}H${right}`} stroke="var(--ink)" strokeDasharray="2 3" />
          <text className="q mono" x={left - 8} y={y(view.limits.least) + 4} textAnchor="end">
            {limit.value}
          </text>
        </>
      ) : null}
      <text className="q mono" x={left - 8} y={y(0) + 4} textAnchor="end">
        {zero.value}
      </text>
      <path d={`M${left} ${y(0)}H${right}`} stroke="var(--rule)" />
      <path d={path} fill="none" stroke="var(--ink)" strokeWidth="2" />
    </g>
  );
}

function Flows({ spans, x }: { readonly spans: readonly YearSpan[]; readonly x: At }) {
  const say = words.done;
  return (
    <g>
      <text x="0" y="118" fontWeight="600">
        {say.flows}
      </text>
      <text className="q" x="0" y="136">
        {say.flowUnder}
      </text>
      <path d={`M${left} 142H${right}`} stroke="var(--edge)" />
      {spans.map((flow) => (
        <g key={flow.from + flow.says}>
          <rect
            x={x(flow.from)}
            y="116"
            width={Math.max(2, x(flow.to) - x(flow.from))}
            height="26"
            fill="var(--band-2)"
            stroke="var(--ink)"
          />
          <text className="q" x={(x(flow.from) + x(flow.to)) / 2} y="134" textAnchor="middle">
            {flow.says}
          </text>
        </g>
      ))}
    </g>
  );
}

/** Room the words of a bar take, about. */
const wordsRoom = (span: YearSpan): number => span.says.length * 6.6 + 8;

/** Where the words of a bar begin: at its start, or further left where the picture ends. */
const wordsAt = (span: YearSpan, x: At): number => Math.min(x(span.from) + 6, right - wordsRoom(span));

/** Bars that overlap, or whose words would, go into lanes of their own. */
function laneSpans(bars: readonly YearSpan[], x: At): readonly (readonly YearSpan[])[] {
  const lanes: YearSpan[][] = [];
  for (const bar of bars) {
    const start = Math.min(x(bar.from), wordsAt(bar, x));
    const free = lanes.find((lane) => {
      const last = lane.at(-1);
      return !last || Math.max(x(last.to), wordsAt(last, x) + wordsRoom(last)) <= start;
    });
    if (free) free.push(bar);
    else lanes.push([bar]);
  }
  return lanes;
}

function Bar({
  span,
  x,
  y,
  pattern,
}: {
  readonly span: YearSpan;
  readonly x: At;
  readonly y: number;
  readonly pattern: string;
}) {
  const start = x(span.from);
  const at = wordsAt(span, x);
  return (
    <g>
      <rect
        x={start}
        y={y}
        width={Math.max(2, x(span.to) - start)}
        height="15"
        fill={`url(#${pattern})`}
        stroke="var(--edge)"
      />
      <rect x={at} y={y + 0.5} width={wordsRoom(span)} height="14" fill="var(--ground)" />
      <text x={at + 4} y={y + 12}>
        {span.says}
      </text>
    </g>
  );
}

function Window({
  span,
  x,
  top,
  height,
}: {
  readonly span: YearSpan;
  readonly x: At;
  readonly top: number;
  readonly height: number;
}) {
  const [start, end] = [x(span.from), x(span.to)];
  const isRight = end > right - 260;
  return (
    <g>
      <rect
        x={start}
        y={top}
        width={Math.max(3, end - start)}
        height={height}
        fill="var(--stain-tint)"
        fillOpacity=".75"
        stroke="var(--stain)"
        strokeWidth="2"
      />
      <text
        className="window-word"
        x={isRight ? start - 8 : end + 8}
        y={top + height - 3}
        textAnchor={isRight ? "end" : "start"}
        fontWeight="600"
      >
        {span.says}
      </text>
    </g>
  );
}

function Steps({ view, x, top }: { readonly view: YearView; readonly x: At; readonly top: number }) {
  const say = words.done;
  let lane = 0;
  let lastAt = Number.NEGATIVE_INFINITY;
  const placed = view.steps.map((step) => {
    const at = x(step.on);
    lane = at - lastAt < 78 ? (lane + 1) % 3 : 0;
    lastAt = at;
    return { ...step, at, lane };
  });
  return (
    <g>
      <text x="0" y={top + 5} fontWeight="600">
        {say.doRow}
      </text>
      <path d={`M${left} ${top}H${right}`} stroke="var(--ink)" />
      {placed.map((step) => (
        <g key={`${step.on}${step.says}`}>
          {step.until ? <path d={`M${step.at} ${top}H${x(step.until)}`} stroke="var(--ink)" strokeWidth="9" /> : null}
          <path d={`M${step.at} ${top - 8}V${top + 16 + step.lane * 15}`} stroke="var(--ink)" strokeWidth="1.5" />
          <path d={`M${step.at} ${top - 8}l6 8l-6 8l-6 -8z`} fill="var(--ink)" />
          <text
            x={step.at > right - 70 ? step.at - 6 : step.at + 6}
            y={top + 22 + step.lane * 15}
            textAnchor={step.at > right - 70 ? "end" : "start"}
            fontWeight="600"
          >
            {step.says}
          </text>
        </g>
      ))}
    </g>
  );
}
