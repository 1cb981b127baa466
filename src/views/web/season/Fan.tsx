/** The fan of a season: bands without and with a choice, counts with their intervals, the year beneath, flags on poles. */
import { useId } from "react";
import { addDays, type Day, monthOf, yearOf } from "../../../units/index.ts";
import type { FanLine, SeasonView, SeasonYear } from "../../model/index.ts";
import { seasonWords } from "../../words/index.ts";
import { words } from "../words.ts";
import { type FanFrame, flagSide, flagStep, type PlacedFlag, point, fanTop as top } from "./frame.ts";
import { Year } from "./YearBeneath.tsx";

interface Props {
  readonly view: SeasonView;
  readonly year: SeasonYear | null;
  readonly supers: readonly { readonly from: Day; readonly to: Day }[];
  readonly frame: FanFrame;
  readonly flags: readonly PlacedFlag[];
}

export function Fan({ view, year, supers, frame, flags }: Props) {
  const id = useId();
  const say = seasonWords;
  const { width, left, right, bottom, height, x } = frame;
  const most = topOf(view);
  // Its name would lie on the scale, or beyond the picture.
  const isAtLeft = x(view.decideOn) < left + 50;
  const y = (share: number) => bottom - (Math.min(share, most) / most) * (bottom - top);
  return (
    <svg viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img" aria-label={view.label}>
      <defs>
        <pattern id={`${id}c`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V6" stroke="var(--edge)" strokeWidth="1.6" />
        </pattern>
        <pattern id={`${id}p`} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
          <path d="M0 0V5" stroke="var(--ink)" strokeWidth="1" />
        </pattern>
      </defs>
      {stepsTo(most).map((share) => (
        <g key={share}>
          <path d={`M${left} ${y(share)}H${right}`} stroke="var(--rule)" />
          <text className="q mono" x={left - 6} y={y(share) + 4} textAnchor="end">
            {Math.round(100 * share)}
          </text>
        </g>
      ))}
      <path
        d={bandPath(view.without, x, y, "wide")}
        fill="var(--bronze-tint)"
        stroke="var(--bronze)"
        strokeWidth=".8"
      />
      <path d={bandPath(view.without, x, y, "half")} fill="var(--bronze-mid)" />
      <path d={middlePath(view.without, x, y)} fill="none" stroke="var(--bronze)" strokeWidth="2" />
      {view.chosen ? (
        <>
          <path
            d={bandPath(view.chosen, x, y, "wide")}
            fill="var(--sheet)"
            fillOpacity=".8"
            stroke="var(--ink)"
            strokeWidth="1"
          />
          <path d={bandPath(view.chosen, x, y, "half")} fill={`url(#${id}p)`} fillOpacity=".55" />
          <path d={middlePath(view.chosen, x, y)} fill="none" stroke="var(--ink)" strokeWidth="3" />
        </>
      ) : null}
      <path d={`M${x(view.decideOn)} ${top}V${bottom}`} stroke="var(--ink)" strokeDasharray="2 3" />
      <text
        className="on-line"
        x={x(view.decideOn) + (isAtLeft ? 5 : -5)}
        y={top + 10}
        textAnchor={isAtLeft ? "start" : "end"}
      >
        {say.today}
      </text>
      {view.counts.map((count, place) => {
        const before = view.counts[place - 1];
        const isClose = before !== undefined && x(count.date) - x(before.date) < 60;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: two counts of one day are told apart by their place alone
          <g key={place}>
            <path d={`M${x(count.date)} ${y(count.low)}V${y(count.high)}`} stroke="var(--ink)" strokeWidth="2" />
            <circle
              cx={x(count.date)}
              cy={y(count.share)}
              r="5"
              fill="var(--ink)"
              stroke="var(--ground)"
              strokeWidth="1.5"
            />
            <text
              className="on-line"
              x={x(count.date) + 6}
              y={Math.max(top + 22, y(count.high) - (isClose ? 20 : 5))}
              textAnchor={x(count.date) > right - 70 ? "end" : "start"}
            >
              {count.says}
            </text>
          </g>
        );
      })}
      <Names view={view} y={y} right={right} />
      <path d={`M${left} ${bottom}H${right}`} stroke="var(--ink)" strokeWidth="1.5" />
      <Months view={view} x={x} y={bottom} right={right} />
      <Year year={year} supers={supers} view={view} frame={frame} cool={`${id}c`} />
      {flags.map((flag) => (
        <path
          key={`pole ${flag.key}`}
          d={`M${x(flag.date)} ${y(0.62 * most)}V${frame.flagsTop + flag.row * flagStep}`}
          stroke={colourOf(flag)}
          strokeWidth="2"
        />
      ))}
      {flags.map((flag) => (
        <Flag key={flag.key} flag={flag} frame={frame} />
      ))}
    </svg>
  );
}

type At = (day: Day) => number;
type Height = (share: number) => number;

/** The scale ends at the next ten above what is drawn, at least at 20 of 100. */
function topOf({ without, chosen, counts }: SeasonView): number {
  const highest = Math.max(
    ...without.days.map(({ range }) => range.q95),
    ...(chosen?.days ?? []).map(({ range }) => range.q95),
    ...counts.map(({ high }) => high),
  );
  return Math.min(1, Math.max(0.2, Math.ceil(10 * highest) / 10));
}

const stepsTo = (most: number): readonly number[] => {
  const step = most > 0.5 ? 0.2 : 0.1;
  return Array.from({ length: Math.floor(most / step + 1e-9) + 1 }, (_, place) => place * step);
};

function bandPath({ days }: FanLine, x: At, y: Height, which: "wide" | "half"): string {
  const [low, high] = which === "wide" ? (["q05", "q95"] as const) : (["q25", "q75"] as const);
  const upper = days.map(({ date, range }) => point(x(date), y(range[high])));
  const lower = days.map(({ date, range }) => point(x(date), y(range[low]))).reverse();
  return `M${[...upper, ...lower].join("L")}z`;
}

const middlePath = ({ days }: FanLine, x: At, y: Height): string =>
  `M${days.map(({ date, range }) => point(x(date), y(range.q50))).join("L")}`;

/** Names at the right end: above the band where it ends low, on it where it ends high; apart from each other. */
function Names({ view, y, right }: { readonly view: SeasonView; readonly y: Height; readonly right: number }) {
  const without = view.without.days.at(-1)?.range;
  const chosen = view.chosen?.days.at(-1)?.range;
  if (!without) return null;
  const above = y(without.q95) - 8;
  const first = above > top + 40 ? above : Math.max(top + 26, y(without.q75));
  const second = chosen ? y(chosen.q95) - 8 : first;
  // The lower of two that would lie on each other moves down, the upper one stays.
  const apart = Math.abs(second - first) < 20 ? first + (second < first ? -20 : 20) : second;
  const at = { x: right - 4, textAnchor: "end", fontWeight: 600, className: "on-line" } as const;
  return (
    <>
      <text {...at} y={first}>
        {view.without.name}
      </text>
      {view.chosen ? (
        <text {...at} y={apart}>
          {view.chosen.name}
        </text>
      ) : null}
    </>
  );
}

function Months({
  view,
  x,
  y,
  right,
}: {
  readonly view: SeasonView;
  readonly x: At;
  readonly y: number;
  readonly right: number;
}) {
  const months: Day[] = [];
  for (let day = nextMonth(view.from); day <= view.to; day = nextMonth(day)) months.push(day);
  const first = months[0];
  const room = first === undefined ? 0 : (right - x(view.from)) / Math.max(1, months.length);
  const every = Math.max(1, Math.ceil(44 / Math.max(1, room)));
  return months.map((month, place) => (
    <g key={month}>
      <path d={`M${x(month)} ${y}v6`} stroke="var(--ink)" />
      {place % every === 0 && x(month) < right - 12 ? (
        <text className="q" x={x(month)} y={y + 20} textAnchor="middle">
          {words.apiaries.monthShort({ month: monthOf(month) })}
          {monthOf(month) === 1 ? ` ${yearOf(month)}` : ""}
        </text>
      ) : null}
    </g>
  ));
}

const nextMonth = (day: Day): Day => `${addDays(`${day.slice(0, 7)}-01`, 32).slice(0, 7)}-01`;

const colourOf = ({ isDone }: PlacedFlag): string => (isDone ? "var(--ink-3)" : "var(--stain)");

function Flag({ flag, frame }: { readonly flag: PlacedFlag; readonly frame: FanFrame }) {
  const at = frame.x(flag.date);
  const y = frame.flagsTop + flag.row * flagStep;
  const colour = colourOf(flag);
  const voice = flag.isDone ? "flag-word q" : "flag-word on";
  return (
    <g>
      <rect
        x={at - flagSide / 2}
        y={y}
        width={flagSide}
        height={flagSide}
        rx="3"
        fill={flag.isDone ? "var(--ground)" : colour}
        stroke={colour}
        strokeWidth="1.5"
      />
      <text className={voice} x={at} y={y + (flag.isDone ? 27 : 21)} textAnchor="middle" fontWeight="650">
        {seasonWords.letters[flag.kind]}
      </text>
      {flag.isDone ? null : flag.isLast ? (
        <text className={voice} x={at} y={y + 36} textAnchor="middle">
          {seasonWords.out({ kind: flag.kind })}
        </text>
      ) : (
        <path d={`M${at - 8} ${y + 29}h16M${at - 8} ${y + 34}h16`} stroke="var(--on-stain)" strokeWidth="1.5" />
      )}
    </g>
  );
}
