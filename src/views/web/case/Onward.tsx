/** The end of a question: what can be printed or looked at from here, and the one step that goes on. */
import type { ReactNode } from "react";
import { Link } from "wouter";
import type { Question } from "../../../casebook/index.ts";
import { words } from "../words.ts";

interface Props {
  readonly caseId: string;
  readonly to: Question;
  /** Further ways to go, before the step. */
  readonly children?: ReactNode;
}

export function Onward({ caseId, to, children }: Props) {
  return (
    <p className="acts onward">
      {children}
      <Link className="press" href={`/cases/${caseId}/${to}`}>
        {words.case.toQuestion({ question: to })}
      </Link>
    </p>
  );
}
