/** Question 6: were the steps done, did it work, what became of the colonies, and the closing of the case. */
import { settled } from "../../../../casebook/index.ts";
import { workedAnswer } from "../../../model/index.ts";
import { Answer } from "../../parts/Answer.tsx";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";
import { Check } from "../worked/Check.tsx";
import { Closing } from "../worked/Closing.tsx";
import { Outcomes } from "../worked/Outcomes.tsx";
import { Steps } from "../worked/Steps.tsx";
import type { QuestionProps } from "./registry.ts";
import "../notices-acts.css";
import "../worked/worked.css";

export default function Worked({ caseId }: QuestionProps) {
  const { casebook, today } = useCasebook();
  const state = casebook.cases[caseId];
  if (!state) return null;
  const say = words.worked;
  const closed = settled(state.closed);
  const under = [
    closed?.confirmedBy ? say.confirmedBy({ by: closed.confirmedBy }) : "",
    closed?.learnt ? say.learnt({ learnt: closed.learnt }) : "",
  ]
    .filter(Boolean)
    .join(" ");
  return (
    <>
      <Answer text={workedAnswer(casebook, state, { today, words })} under={under || undefined} />
      <Check state={state} />
      <Steps state={state} />
      <Outcomes state={state} />
      <Closing state={state} />
    </>
  );
}
