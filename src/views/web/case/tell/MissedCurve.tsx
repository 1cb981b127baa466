/** What a number of bees could miss: how often they show none, by the share of bees that have mites. */
import { useState } from "react";
import { curveTo, type SamplePlanView } from "../../../model/index.ts";
import { words } from "../../words.ts";

const [width, height, left, bottom] = [440, 190, 44, 30];
const x = (prevalence: number) => left + (Math.min(prevalence, curveTo) / curveTo) * (width - left - 12);
const y = (missed: number) => 8 + (1 - missed) * (height - bottom - 8);

export function MissedCurve({ plan }: { readonly plan: SamplePlanView }) {
  const [asTable, setAsTable] = useState(false);
  const say = words.tell.plan;
  const path = plan.curve
    .map((point, index) => `${index === 0 ? "M" : "L"}${x(point.prevalence).toFixed(1)} ${y(point.missed).toFixed(1)}`)
    .join("");
  const here = plan.points.find((point) => point.prevalence === plan.designPrevalence);
  return (
    <figure className="pic missed">
      <figcaption>
        <b>{plan.curveHead}</b>
        <span className="twins">
          <button type="button" className="act" aria-pressed={asTable} onClick={() => setAsTable(!asTable)}>
            {asTable ? words.shell.picture : words.shell.table}
          </button>
        </span>
      </figcaption>
      <p className="note q2">{plan.couldMiss}</p>
      {asTable ? (
        <table>
          <thead>
            <tr>
              <th scope="col">{say.columns.prevalence}</th>
              <th scope="col">{say.columns.missed}</th>
            </tr>
          </thead>
          <tbody>
            {plan.points.map((point) => (
              <tr key={point.prevalence}>
                <td>{say.share({ share: point.prevalence })}</td>
                <td>{say.share({ share: point.missed })}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : (
        <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={plan.curveText}>
          <path d={`${path}L${x(curveTo)} ${y(0)}L${x(0)} ${y(0)}Z`} fill="var(--band-2)" />
          <path d={path} fill="none" stroke="var(--ink)" strokeWidth="2" />
          <path d={`M${x(0)} ${y(1)}V${y(0)}H${x(curveTo)}`} fill="none" stroke="var(--edge)" />
          {[0, 0.5, 1].map((missed) => (
            <text key={missed} className="q mono" x={left - 8} y={y(missed) + 4} textAnchor="end">
              {say.share({ share: missed })}
            </text>
          ))}
          {[0, 0.05, 0.1, 0.15, 0.2].map((prevalence) => (
            <g key={prevalence}>
              <path d={`M${x(prevalence)} ${y(0)}v5`} stroke="var(--edge)" />
              <text className="q mono" x={x(prevalence)} y={height - 10} textAnchor="middle">
                {say.share({ share: prevalence })}
              </text>
            </g>
          ))}
          {here && here.prevalence <= curveTo ? (
            <>
              <path d={`M${x(here.prevalence)} ${y(0)}V${y(here.missed) - 24}`} stroke="var(--ink)" />
              <circle cx={x(here.prevalence)} cy={y(here.missed)} r="4" fill="var(--ink)" />
              <text x={x(here.prevalence) + 8} y={y(here.missed) - 14}>
                {say.pointSays({ prevalence: here.prevalence, missed: here.missed })}
              </text>
            </>
          ) : null}
        </svg>
      )}
      <p className="note q3">{say.axes}</p>
    </figure>
  );
}
