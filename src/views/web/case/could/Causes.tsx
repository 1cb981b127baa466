/** The ranked causes: number, range and word; dots on their scale; reasons for and against; what can come with it. */
import { useState } from "react";
import { type CauseView, type CouldView, causesTable, type ReasonView } from "../../../model/index.ts";
import { saveText } from "../../parts/save.ts";
import { saveCsv } from "../../pictures/save.ts";
import { Twins } from "../../pictures/Twins.tsx";
import { words } from "../../words.ts";
import { CausesTable } from "./CausesTable.tsx";
import { causesSvg } from "./causes-svg.ts";
import { Dots } from "./Dots.tsx";

interface Props {
  readonly view: CouldView;
  readonly name: string;
}

export function Causes({ view, name }: Props) {
  const [all, setAll] = useState(false);
  const [asTable, setAsTable] = useState(false);
  const say = words.could;
  const shown = all ? view.causes : view.first;
  return (
    <section aria-labelledby="h-causes">
      <div className="head">
        <h2 id="h-causes">{say.head}</h2>
        <span className="note q3">{say.headNote}</span>
        <Twins
          picture={say.head}
          isTable={asTable}
          turn={() => setAsTable(!asTable)}
          saveSvg={() => saveText(`${name}-causes.svg`, "image/svg+xml", causesSvg(shown, say.chartName))}
          saveCsv={() => void saveCsv({ name: `${name}-causes`, ...causesTable(view, words) })}
        />
      </div>
      {asTable ? (
        <CausesTable causes={view.causes} />
      ) : (
        <>
          <div className="axis" aria-hidden="true">
            <span>{say.axisRange}</span>
            <div>
              <span>0</span>
              <span>5</span>
              <span>10</span>
            </div>
            <span>{say.axisWeights}</span>
          </div>
          <ol className="causes">
            {shown.map((cause) => (
              <Cause key={cause.id} cause={cause} />
            ))}
          </ol>
        </>
      )}
      <p className="trace">
        {asTable || view.causes.length <= view.first.length ? null : (
          <>
            {all ? null : `${say.more({ count: view.causes.length - view.first.length, atMost: view.moreAtMost })} `}
            <button type="button" className="act" onClick={() => setAll(!all)}>
              {all ? say.showFewer : say.showAll}
            </button>
            .{" "}
          </>
        )}
        {view.scaleSays} {view.causes[0]?.dots ? say.dotsLegend : say.barLegend} {view.judged} {view.nothingWrong}
      </p>
    </section>
  );
}

function Cause({ cause }: { readonly cause: CauseView }) {
  const say = words.could;
  const role = say.trackRole[cause.role];
  return (
    <li>
      <p className="freq">
        {cause.proof ? (
          <>
            <b className="long">{say.provenWord}</b>
            <span>{cause.proof}</span>
          </>
        ) : (
          <>
            <b className={cause.number.length > 2 ? "long" : undefined}>
              {cause.number}
              <small>{say.in10}</small>
            </b>
            <span>{cause.range}</span>
            <span>{cause.word}</span>
          </>
        )}
      </p>
      <Dots posterior={cause.posterior} low={cause.low} high={cause.high} dots={cause.dots} />
      <div className="why">
        <h3>
          {cause.term} {cause.latin ? <i>{cause.latin}</i> : null}
        </h3>
        {role ? <p className="role">{role}</p> : null}
        {cause.shownFor ? <p className="role">{cause.shownFor}</p> : null}
        <p>
          <span>{say.for}</span>
          <Reasons reasons={cause.for} none={say.nothingFor} />
        </p>
        <p>
          <span>{say.against}</span>
          <Reasons reasons={cause.against} none={say.nothingAgainst} />
        </p>
        <p>
          <span>{say.and}</span>
          {cause.and}
        </p>
      </div>
    </li>
  );
}

/** Reasons with their weights: those of the cause itself, then the signs that another cause explains. */
function Reasons({ reasons, none }: { readonly reasons: readonly ReasonView[]; readonly none: string }) {
  if (reasons.length === 0) return <>{none}</>;
  const [own, elsewhere] = [false, true].map((is) => reasons.filter((reason) => reason.elsewhere === is));
  return (
    <>
      <ReasonList reasons={own ?? []} end={elsewhere?.length ? ";" : ""} />
      {elsewhere?.length ? `${words.could.elsewhere}: ` : ""}
      <ReasonList reasons={elsewhere ?? []} end="" />
    </>
  );
}

function ReasonList({ reasons, end }: { readonly reasons: readonly ReasonView[]; readonly end: string }) {
  return reasons.map((reason, index) => {
    const term = (
      <>
        {reason.term}
        <i className="w" style={{ "--w": Math.min(reason.ticks, 12) } as React.CSSProperties} aria-hidden="true" />
        <span className="vh">{words.could.bits({ bits: reason.bits })}</span>
      </>
    );
    return (
      <span key={reason.term}>
        <span className="nw">
          {reason.parts ? <b>{term}</b> : term}
          {index < reasons.length - 1 ? "," : end}
        </span>{" "}
      </span>
    );
  });
}
