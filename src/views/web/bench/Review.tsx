/** Before the lock: every bee of the reading, the count, and why it ends here. */

import { useState } from "react";
import type { bench } from "../../../reasoning/index.ts";
import { answered } from "../../../units/index.ts";
import {
  type BenchView,
  lockDraft,
  type OpenReading,
  proposedStop,
  type ReadBee,
  readCorrection,
  type StoredBee,
  trunkWords,
} from "../../model/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { ChoiceField, LongField, useForm } from "../parts/Form.tsx";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";
import { SpecimenLabel } from "./SpecimenLabel.tsx";
import { TallyColumn } from "./TallyColumn.tsx";

interface Props {
  readonly view: BenchView;
  readonly reading: OpenReading;
  readonly bees: readonly StoredBee[];
  readonly tally: bench.Tally;
  readonly correct: (bee: StoredBee, read: ReadBee) => Promise<void>;
  readonly back: () => void;
}

export function Review({ view, reading, bees, tally, correct, back }: Props) {
  const say = words.bench;
  const { record, today } = useCasebook();
  const { problems, onSubmit } = useForm(
    (fields) => answered(fields),
    async (fields) => {
      await record([lockDraft(view.id, reading, { fields, today })]);
    },
  );
  const stops = ["target-reached", "no-more-bees", "stopped-early"] as const;
  return (
    <main id="page" className="bench-page">
      <SpecimenLabel view={view} reading={reading} />
      <Answer text={`**${say.reviewHead}.**`} />
      <div className="review">
        <TallyColumn tally={tally} isBlind={reading.isBlind} />
        {reading.isBlind ? (
          <p>{say.reviewBlind}</p>
        ) : (
          <ol className="review-bees">
            {bees.map((bee) => (
              <ReviewedBee key={bee.bee} bee={bee} correct={correct} />
            ))}
          </ol>
        )}
      </div>
      <form className="form" onSubmit={onSubmit} noValidate>
        <fieldset>
          <legend>{say.lock}</legend>
          <ChoiceField
            name="stop"
            label={say.stop}
            problems={problems}
            value={proposedStop(reading)}
            choices={stops.map((stop) => ({ value: stop, says: say.stops[stop] }))}
          />
          <LongField name="note" label={say.note} problems={problems} wide rows={2} />
        </fieldset>
        <p>{say.lockNote}</p>
        <p className="acts">
          <button type="submit" className="press">
            {say.lock}
          </button>
          <button type="button" className="press quiet" onClick={back}>
            {say.back}
          </button>
        </p>
      </form>
    </main>
  );
}

/** A bee of the list, with a small form that reads it anew. */
function ReviewedBee({ bee, correct }: { readonly bee: StoredBee } & Pick<Props, "correct">) {
  const say = words.bench;
  const [isOpen, setOpen] = useState(false);
  const { problems, onSubmit } = useForm(
    (fields) => readCorrection(fields, bee.read),
    async (read) => {
      await correct(bee, read);
      setOpen(false);
    },
  );
  const trunks = trunkWords.map((value) => ({ value, says: say.trunks[value] }));
  return (
    <li>
      {say.reviewRow({ bee: bee.bee, what: bee.what })}{" "}
      <button
        type="button"
        className="act"
        aria-expanded={isOpen}
        aria-label={say.correctBee({ bee: bee.bee })}
        onClick={() => setOpen((open) => !open)}
      >
        {say.correct}
      </button>
      {isOpen ? (
        <form className="line-form" onSubmit={onSubmit} noValidate>
          <ChoiceField
            name="left"
            label={say.left}
            problems={problems}
            value={bee.read.left ?? "clear"}
            choices={trunks}
          />
          <ChoiceField
            name="right"
            label={say.right}
            problems={problems}
            value={bee.read.right ?? "clear"}
            choices={trunks}
          />
          <label className="tick">
            <input type="checkbox" name="lost" defaultChecked={bee.read.lost} /> {say.lost}
          </label>
          <button type="submit" className="press quiet">
            {say.keepCorrection}
          </button>
        </form>
      ) : null}
    </li>
  );
}
