/** Question 1: red flags first, then the findings of every colony in three states. */
import { Link } from "wouter";
import { coloniesOf, wholeApiary } from "../../../../casebook/index.ts";
import { countFindings, countRedFlags, findingGroups, redFlags } from "../../../model/index.ts";
import { CaseFiles } from "../../files/CaseFiles.tsx";
import { Answer } from "../../parts/Answer.tsx";
import { useEvidence } from "../../reckon/use-own.ts";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";
import { Onward } from "../Onward.tsx";
import { ColonyStates } from "../seen/ColonyStates.tsx";
import { FindingsGrid } from "../seen/FindingsGrid.tsx";
import { HandChoice } from "../seen/HandChoice.tsx";
import { RedFlags } from "../seen/RedFlags.tsx";
import { SeenOn } from "../seen/SeenOn.tsx";
import { Story } from "../seen/Story.tsx";
import type { QuestionProps } from "./registry.ts";
import "../seen/seen.css";

export default function Seen({ caseId }: QuestionProps) {
  const { casebook } = useCasebook();
  const evidence = useEvidence();
  const state = casebook.cases[caseId];
  if (!state) return null;
  const say = words.seen;
  const colonies = coloniesOf(casebook, caseId).map((colony) => ({ id: colony.id, code: colony.code ?? colony.id }));
  const flags = redFlags(state);
  const flagCount = countRedFlags(flags);
  const groups = findingGroups(state, colonies, words, evidence);
  const { answered, present } = countFindings(groups);
  const termOf = new Map(groups.flatMap(({ rows }) => rows.map(({ id, term }) => [id, term] as const)));
  return (
    <>
      <Answer
        text={
          flagCount.complete
            ? say.answer({ answered, present })
            : say.firstFlags({ left: flagCount.all - flagCount.asked })
        }
        under={say.under}
      />
      <Story state={state} />
      <SeenOn key={caseId} state={state} />
      <RedFlags state={state} flags={flags} count={flagCount} />
      {flagCount.complete ? (
        <>
          <div className="seen-sections">
            <FindingsGrid state={state} groups={groups} colonies={colonies} />
            {colonies.length > 0 ? <ColonyStates state={state} colonies={colonies} /> : <p>{say.noColonies}</p>}
            <CaseFiles state={state} colonies={colonies} findingTerm={(id) => termOf.get(id) ?? id} />
            <section className="walk" aria-labelledby="h-walk">
              <div className="head">
                <h2 id="h-walk">{say.oneByOne}</h2>
                <HandChoice />
              </div>
              <ul>
                {[...colonies, { id: wholeApiary, code: say.apiaryWide }].map((colony) => (
                  <li key={colony.id}>
                    <Link href={`/walk/${caseId}/${colony.id}`}>
                      <span className="c">{colony.code}</span>
                    </Link>
                  </li>
                ))}
              </ul>
            </section>
          </div>
          <Onward caseId={caseId} to={2} />
        </>
      ) : null}
    </>
  );
}
