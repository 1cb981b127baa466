/** The six questions as a scale: a long tick each, a short one for every entry; at the left of a desk, on top of a phone. */
import type { ReactNode } from "react";
import { Link } from "wouter";
import type { SpineQuestion, SpineView } from "../../model/index.ts";
import { words } from "../words.ts";
import { questionPages } from "./questions/registry.ts";

interface SpineProps {
  readonly view: SpineView;
  readonly here: number;
  /** What stands under the name of the case. */
  readonly children?: ReactNode;
}

export function Spine({ view, here, children }: SpineProps) {
  const say = words.case;
  return (
    <nav className="spine" aria-label={say.spine}>
      <div className="id">
        <span className="c">{view.code}</span>
        <span className="name">{view.place}</span>
        <span className="note q3">{view.under}</span>
        {children}
      </div>
      <ol>
        {view.questions.map((question) => (
          <Question key={question.question} view={view} question={question} here={here} />
        ))}
      </ol>
      <PlaceLabel view={view} />
    </nav>
  );
}

interface QuestionProps {
  readonly view: SpineView;
  readonly question: SpineQuestion;
  readonly here: number;
}

function Question({ view, question, here }: QuestionProps) {
  const isHere = question.question === here;
  const content = (
    <>
      <span className="num">{question.question}</span>
      <span className="ask">{question.asks}</span>
      <span className="say">{question.says}</span>
      {question.day ? <time dateTime={question.day}>{words.case.day({ day: question.day })}</time> : null}
    </>
  );
  return (
    <li
      className={isHere ? "open" : question.status === "open" ? "waits" : question.status}
      style={{ "--entries": question.ticks } as React.CSSProperties}
    >
      {questionPages.has(question.question) ? (
        <Link href={`/cases/${view.caseId}/${question.question}`} aria-current={isHere ? "step" : undefined}>
          {content}
        </Link>
      ) : (
        <span className="at">{content}</span>
      )}
    </li>
  );
}

function PlaceLabel({ view }: { readonly view: SpineView }) {
  const { label } = view;
  const content = (
    <>
      <span className="code">{label.code}</span>
      <span className="mark n">{label.mark}</span>
      <span className="place">{label.district}</span>
      <span className="row">
        <span>{label.colonies}</span>
        <time dateTime={label.openedOn}>{label.openedOn}</time>
      </span>
      <span className="foot">{label.foot}</span>
    </>
  );
  return label.apiary ? (
    <Link className="label" href={`/apiaries/${label.apiary}`}>
      {content}
    </Link>
  ) : (
    <div className="label">{content}</div>
  );
}
