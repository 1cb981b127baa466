/** Question 4: what was found in each specimen, what it could have missed, what weakens it, and other tests. */
import { useState } from "react";
import { Link } from "wouter";
import { foundView, fromCase, missedView, rangeAddress } from "../../../model/index.ts";
import { Answer } from "../../parts/Answer.tsx";
import { MissedCurve } from "../../pictures/MissedCurve.tsx";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";
import { FoundTable } from "../found/FoundTable.tsx";
import { OtherTests } from "../found/OtherTests.tsx";
import { Quality } from "../found/Quality.tsx";
import { SourceLines } from "../found/SourceLines.tsx";
import { SpecimenCard } from "../found/SpecimenCard.tsx";
import { Onward } from "../Onward.tsx";
import { PaperLinks } from "../PaperLinks.tsx";
import type { QuestionProps } from "./registry.ts";
import "../found/found.css";

export default function Found({ caseId }: QuestionProps) {
  const { casebook } = useCasebook();
  const view = foundView(casebook, caseId, words);
  const state = casebook.cases[caseId];
  const [chosen, choose] = useState<string | null>(null);
  if (!state) return null;
  const say = words.found;
  const shown = view.specimens.find((each) => each.id === (chosen ?? view.first)) ?? view.specimens[0] ?? null;
  const read = shown?.readings[0]?.tally.read ?? 0;
  return (
    <>
      <Answer text={view.answer} />
      {view.specimens.length > 0 ? (
        <>
          <FoundTable view={view} chosen={shown?.id ?? null} choose={choose} />
          <p className="trace under-table">
            {view.bandsSay} {say.linesTrace}
          </p>
        </>
      ) : null}
      {shown ? (
        <div className="found-parts">
          <SpecimenCard specimen={shown} />
          {read > 0 ? (
            <MissedCurve view={missedView({ bees: read }, words)} name={`missed-${shown.label.code}`} />
          ) : (
            <span />
          )}
          <Quality specimen={shown} caseId={caseId} />
        </div>
      ) : null}
      {shown?.meaning ? <SourceLines meaning={shown.meaning} colony={shown.colony} /> : null}
      <OtherTests state={state} />
      <Onward caseId={caseId} to={5}>
        <PaperLinks caseId={caseId} papers={["report", "labels", "kit"]} />
        {shown?.estimate ? (
          <Link className="act" href={fromCase(rangeAddress(shown.estimate), caseId, 4)}>
            {say.reckonFurther({ code: shown.label.code })}
          </Link>
        ) : null}
        <Link className="act" href="/bench">
          {say.toBench}
        </Link>
      </Onward>
    </>
  );
}
