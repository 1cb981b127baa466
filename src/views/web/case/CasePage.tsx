/** A case: its six questions as the spine, and the page of the one that is open. */
import { Suspense, useEffect, useLayoutEffect } from "react";
import { Link, Redirect } from "wouter";
import { conflictsOf } from "../../../casebook/index.ts";
import { spineView } from "../../model/index.ts";
import { differenceWords } from "../../words/index.ts";
import { fetchWhenIdle, lazily, Shown } from "../parts/lazily.tsx";
import { Missing } from "../parts/Missing.tsx";
import type { PageProps } from "../routes.ts";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";
import { HandOn } from "./HandOn.tsx";
import { questionPages } from "./questions/registry.ts";
import { Spine } from "./Spine.tsx";
import { StopBox } from "./StopBox.tsx";
import "../look/spine.css";
import "./case.css";

const pages = new Map([...questionPages].map(([question, load]) => [question, lazily(load)]));

/** Question 5 is the stop itself when there is one: it says it in place of its advice. */
const questionOfAdvice = 5;

export default function CasePage({ params }: PageProps) {
  const { casebook } = useCasebook();
  useEffect(() => fetchWhenIdle([...pages.values()]), []);
  const caseId = params.case ?? "";
  const spine = spineView(casebook, caseId, words);
  const title = spine ? `${spine.code} ${spine.place}` : words.shell.tool;
  useLayoutEffect(() => {
    document.title = title;
    return () => {
      document.title = words.shell.tool;
    };
  }, [title]);
  const apart = conflictsOf(casebook, caseId).length;
  if (!spine) return <Missing text={words.case.missing} />;
  const asked = Number(params.question);
  const page = pages.get(asked);
  const state = casebook.cases[caseId];
  if (!page) {
    // The case opens at the first question that waits; a question without a page yet falls back to the last that has one.
    const last = Math.max(...[...pages.keys()].filter((question) => question <= spine.open));
    return <Redirect to={`/cases/${caseId}/${last}`} replace />;
  }
  return (
    <div className="case">
      <Spine view={spine} here={asked}>
        <HandOn view={spine} />
      </Spine>
      <main id="page" className="open-q">
        {apart > 0 ? (
          <p className="q2">
            <Link href="/records/differences">{differenceWords.link({ count: apart })}</Link>
          </p>
        ) : null}
        {state ? <StopBox state={state} isAdvice={asked === questionOfAdvice} /> : null}
        <Suspense fallback={<p className="busy">{words.shell.opening}</p>}>
          <Shown key={`${caseId} ${asked}`} page={page} props={{ caseId }} />
        </Suspense>
      </main>
    </div>
  );
}
