/** What so many bees could miss: a falling curve, its points in words, a dashed one for an eye that overlooks some. */
import type { MissedView } from "../../model/index.ts";
import { Picture } from "./Picture.tsx";

const [left, right, top, bottom] = [44, 430, 14, 196];

export function MissedCurve({ view, name }: { readonly view: MissedView; readonly name: string }) {
  const end = view.curve.at(-1)?.prevalence ?? 0.15;
  const x = (prevalence: number) => left + (prevalence / end) * (right - left);
  const y = (missed: number) => bottom - missed * (bottom - top);
  const line = (of: "missed" | "judged") =>
    view.curve
      .map((point, index) => `${index ? "L" : "M"}${x(point.prevalence).toFixed(1)} ${y(point[of]).toFixed(1)}`)
      .join("");
  const step = end <= 0.2 ? 0.05 : end <= 0.5 ? 0.1 : 0.25;
  const ticks = Array.from({ length: Math.round(end / step) + 1 }, (_, index) => index * step);
  const { main } = view;
  const labelled = view.points.filter((point) => x(point.prevalence) - left > 12);
  const roomForMain = x(main.prevalence) < right - 150;
  return (
    <Picture
      title={view.title}
      under={view.under}
      table={{ name, columns: view.table.columns, rows: view.table.rows }}
      after={view.dashed ? <p>{view.dashed}</p> : null}
    >
      <svg viewBox="0 0 440 230" width="440" height="230" role="img" aria-label={view.label}>
        {ticks.map((tick) => (
          <g key={tick}>
            <path d={`M${x(tick)} ${bottom}v6`} stroke="var(--edge)" />
            <text className="q mono" x={x(tick)} y={bottom + 21} textAnchor="middle">
              {Math.round(100 * tick)}
            </text>
          </g>
        ))}
        {[0, 0.5, 1].map((tick) => (
          <g key={tick}>
            <path d={`M${left} ${y(tick)}h-6`} stroke="var(--edge)" />
            <text className="q mono" x={left - 10} y={y(tick) + 4} textAnchor="end">
              {100 * tick}
            </text>
          </g>
        ))}
        <path d={`M${left} ${top}V${bottom}H${right}`} fill="none" stroke="var(--edge)" />
        <path d={`${line("missed")}L${right} ${bottom}L${left} ${bottom}z`} fill="var(--band-2)" />
        {view.dashed ? (
          <path d={line("judged")} fill="none" stroke="var(--ink)" strokeWidth="1.5" strokeDasharray="5 4" />
        ) : null}
        <path d={line("missed")} fill="none" stroke="var(--ink)" strokeWidth="2.5" />
        <path d={`M${x(main.prevalence)} ${bottom}V${Math.min(y(main.missed), 140)}`} stroke="var(--ink)" />
        <circle cx={x(main.prevalence)} cy={y(main.missed)} r="4.5" fill="var(--ink)" />
        <text
          x={x(main.prevalence) + (roomForMain ? 10 : -8)}
          y={Math.min(y(main.missed) - 30, 146)}
          fontWeight="600"
          textAnchor={roomForMain ? "start" : "end"}
        >
          {main.at}
        </text>
        <text
          x={x(main.prevalence) + (roomForMain ? 10 : -8)}
          y={Math.min(y(main.missed) - 12, 164)}
          textAnchor={roomForMain ? "start" : "end"}
        >
          {main.times}
        </text>
        {labelled.map((point) => (
          <g key={point.prevalence}>
            <circle cx={x(point.prevalence)} cy={y(point.missed)} r="3" fill="var(--ink)" />
            <text className="q" x={x(point.prevalence) + 10} y={y(point.missed) - 5}>
              {point.says}
            </text>
          </g>
        ))}
      </svg>
    </Picture>
  );
}
