/** The red flags: asked before anything else, each with what to do when it is there. */
import type { CaseState } from "../../../../casebook/index.ts";
import { type RedFlagCount, type RedFlagView, redFlagDraft } from "../../../model/index.ts";
import { ThreeStates } from "../../parts/ThreeStates.tsx";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";
import { useSeenOn } from "./seen-on.ts";

interface Props {
  readonly state: CaseState;
  readonly flags: readonly RedFlagView[];
  readonly count: RedFlagCount;
}

export function RedFlags({ state, flags, count }: Props) {
  const { record, today } = useCasebook();
  const on = useSeenOn(state.id, today);
  const say = words.seen;
  const list = (
    <ol className="flags">
      {flags.map((flag) => (
        <li key={flag.id}>
          <div>
            <h3>{flag.question}</h3>
            {flag.suchAs.length > 0 ? <p className="note q2">{say.suchAs({ signs: flag.suchAs })}</p> : null}
          </div>
          <ThreeStates
            of={flag.question}
            state={flag.state}
            says={say.flagStates}
            answer={(answer) => void record([redFlagDraft(state, flag.id, answer, on)])}
          />
        </li>
      ))}
    </ol>
  );
  // What stops the work stands above the question already.
  const present = flags.filter((flag) => flag.act !== null && !flag.stopAndReport);
  return (
    <section className="red-flags" aria-labelledby="h-flags">
      {present.map((flag) => (
        <div key={flag.id} className="heed" role="alert">
          <b>{flag.question}</b>
          <span>{[flag.act, ...flag.doNot].join(" ")}</span>
        </div>
      ))}
      {flags
        .filter((flag) => flag.against.length > 0)
        .map((flag) => (
          <div key={flag.id} className="heed">
            <b>{flag.question}</b>
            <span>{say.flagAgainst({ signs: flag.against, isNo: flag.state === "absent" })}</span>
          </div>
        ))}
      <div className="head">
        <h2 id="h-flags">{say.flagHead}</h2>
        <span className="note q3">{count.complete ? say.flagCount(count) : say.flagHint}</span>
      </div>
      {count.complete ? (
        <details>
          <summary className="act">{say.flagsAgain}</summary>
          {list}
        </details>
      ) : (
        list
      )}
    </section>
  );
}
