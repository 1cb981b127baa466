/** Six ticks on a rule: done is full, the open one heavy and tall, those to come are short. */
import { words } from "../words.ts";

const questions = [1, 2, 3, 4, 5, 6] as const;

export function QuestionTicks({ open }: { readonly open: number }) {
  return (
    <svg width="84" height="20" viewBox="0 0 84 20" role="img" aria-label={words.cases.ticks({ question: open })}>
      <path d="M0 18H83" stroke="var(--edge)" />
      {questions.map((question) => {
        const x = 4 + (question - 1) * 15;
        if (question === open) return <path key={question} d={`M${x} 18V0`} stroke="var(--ink)" strokeWidth="5" />;
        return question < open ? (
          <path key={question} d={`M${x} 18V8`} stroke="var(--ink)" strokeWidth="1.5" />
        ) : (
          <path key={question} d={`M${x} 18V14`} stroke="var(--edge)" strokeWidth="1.5" />
        );
      })}
    </svg>
  );
}
