/** Where people differ, side by side, each settled by a person with a new entry. */
import { useState } from "react";
import { Link } from "wouter";
import { type Difference, type DifferenceSide, differences, settlingDraft } from "../../model/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { Rich } from "../parts/Rich.tsx";
import { useCasebook } from "../store/context.ts";
import { localTime } from "../store/today.ts";
import { words } from "../whole-words.ts";
import "./records.css";

export default function DifferencesPage() {
  const { casebook, entries, record } = useCasebook();
  const say = words.differences;
  const found = differences(casebook, words);
  const [told, setTold] = useState<string | null>(null);
  const settle = async (difference: Difference, side: DifferenceSide) => {
    const draft = settlingDraft(await entries(), difference, side.entry);
    if (draft === null) {
      setTold(say.notHere);
      return;
    }
    await record([draft]);
    setTold(say.settled);
  };
  return (
    <main id="page" className="plain records-page">
      <Answer text={say.title({ count: found.length })} under={say.under} />
      <div role="status">{told ? <Rich text={told} /> : null}</div>
      {found.map((difference) => (
        <section key={difference.key} aria-labelledby={idOf(difference)}>
          <h2 id={idOf(difference)}>
            {difference.where}: {difference.what}
          </h2>
          <div className="sides">
            {difference.sides.map((side) => (
              <Side
                key={side.entry}
                side={side}
                what={difference.what}
                settle={difference.isSettledHere ? () => void settle(difference, side) : null}
              />
            ))}
          </div>
          {difference.href ? (
            <p className="acts">
              <Link className="act" href={difference.href}>
                {say.toPlace}
                <span className="vh">: {difference.where}</span>
              </Link>
            </p>
          ) : null}
        </section>
      ))}
    </main>
  );
}

const idOf = ({ key }: Difference): string => `d-${key.replace(/[^\w-]+/g, "-")}`;

function Side({
  side,
  what,
  settle,
}: {
  readonly side: DifferenceSide;
  readonly what: string;
  readonly settle: (() => void) | null;
}) {
  const say = words.differences;
  return (
    <div className="side">
      <dl>
        {side.says.map(([name, value]) => (
          <div key={name}>
            {name ? <dt>{name}</dt> : <dt className="vh">{what}</dt>}
            <dd>{value || say.nothing}</dd>
          </div>
        ))}
      </dl>
      <p className="q2">
        {say.by({ author: side.author, when: `${side.recordedAt.slice(0, 10)}, ${localTime(side.recordedAt)}` })}
      </p>
      {settle ? (
        <button type="button" className="press quiet" onClick={settle}>
          {say.stands}
          <span className="vh"> {say.standsOf({ author: side.author, what })}</span>
        </button>
      ) : null}
    </div>
  );
}
