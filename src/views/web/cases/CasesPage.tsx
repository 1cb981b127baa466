/** Cases: what waits on whom, overdue first. */
import { useState } from "react";
import { Link } from "wouter";
import { casesView } from "../../model/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";
import { CasesTable } from "./CasesTable.tsx";
import { WaitsOn } from "./WaitsOn.tsx";
import "./cases.css";

export default function CasesPage() {
  const { casebook, today, isDemonstration, may, openCasebook } = useCasebook();
  const [who, setWho] = useState<string | null>(null);
  const view = casesView({ casebook, today, who, words });
  const say = words.cases;
  if (view.isEmpty)
    return (
      <main id="page" className="plain">
        <Answer text={say.none} under={say.noneUnder} />
        <p className="acts">
          {may("case-opened") ? (
            <Link className="press" href="/cases/open">
              {say.openOne}
            </Link>
          ) : null}
          {isDemonstration ? null : (
            <button type="button" className="press quiet" onClick={() => openCasebook("demonstration")}>
              {say.openDemonstration}
            </button>
          )}
        </p>
      </main>
    );
  return (
    <div className="cases-page">
      <WaitsOn view={view} who={who} choose={setWho} />
      <main id="page">
        <Answer text={view.answer} />
        {view.stops.map((stop) => (
          <div key={stop.id} className="stop">
            <b>{say.stop}</b>
            <span>
              <Link href={`/cases/${stop.id}`}>
                <b>{stop.place}</b>
              </Link>{" "}
              <span className="c">{stop.code}</span> {stop.act}
            </span>
          </div>
        ))}
        <CasesTable view={view} />
        <p className="acts">
          {may("case-opened") ? (
            <Link className="press" href="/cases/open">
              {say.openOne}
            </Link>
          ) : null}
          {isDemonstration ? null : (
            <button type="button" className="act" onClick={() => openCasebook("demonstration")}>
              {say.openDemonstration}
            </button>
          )}
        </p>
      </main>
    </div>
  );
}
