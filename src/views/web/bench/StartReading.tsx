/** Begin a reading, or a second one beside a locked one; what the locked ones found. */
import { Link } from "wouter";
import { type BenchView, readReadingStart, startDraft } from "../../model/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { TextField, useForm } from "../parts/Form.tsx";
import { useCasebook } from "../store/context.ts";
import { newId } from "../store/new-id.ts";
import { words } from "../words.ts";

/** Bees read where no plan says how many. Common practice, no source. */
const usualBees = 50;

export function StartReading({ view }: { readonly view: BenchView }) {
  const { record, today, author, signAs } = useCasebook();
  const say = words.bench;
  const last = view.locked.at(-1);
  const { problems, onSubmit } = useForm(readReadingStart, async (start) => {
    if (author === "") await signAs(start.reader);
    await record([startDraft({ view, start, readingId: newId(), method: say.method, today })]);
  });
  const bees = view.received?.beesReceived ?? 50;
  return (
    <>
      <Answer
        text={
          last
            ? say.locked({ positive: last.tally.positive, read: last.tally.read })
            : say.received({
                bees,
                condition: say.conditions[(view.received?.condition ?? 0) as 0 | 1 | 2 | 3],
                acceptance: say.acceptances[view.received?.acceptance ?? "accepted"],
              })
        }
        under={last ? say.againNote({ readings: view.locked.length }) : undefined}
      />
      {last ? (
        <p className="acts">
          <Link className="press" href={`/cases/${view.caseId}/4`}>
            {words.case.toQuestion({ question: 4 })}
          </Link>
        </p>
      ) : null}
      <form className="form" onSubmit={onSubmit} noValidate>
        <fieldset>
          <legend>{last ? say.again : say.startHead}</legend>
          <TextField name="reader" label={say.reader} value={last ? "" : author} needed problems={problems} />
          <TextField
            name="target"
            label={say.target}
            hint={say.targetHint}
            numeric
            value={String(Math.max(1, Math.min(view.plannedBees ?? usualBees, bees)))}
            needed
            problems={problems}
          />
          <label className="tick wide">
            <input type="checkbox" name="blind" defaultChecked={last !== undefined} /> {say.blind}
          </label>
        </fieldset>
        <p className="acts">
          <button type="submit" className="press">
            {say.start}
          </button>
        </p>
      </form>
    </>
  );
}
