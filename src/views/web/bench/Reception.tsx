/** A vial has come: its condition, how many bees, alive or not, accepted or not; or two vials with one code to settle. */
import { settled } from "../../../casebook/index.ts";
import { cautions } from "../../../knowledge/index.ts";
import { type BenchView, readReception, receptionDraft, relabelDraft, specimenCodes } from "../../model/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { ChoiceField, LongField, TextField, useForm } from "../parts/Form.tsx";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";

export function Reception({ view }: { readonly view: BenchView }) {
  const { record, today } = useCasebook();
  const say = words.bench;
  const { problems, onSubmit } = useForm(
    (fields) => readReception(fields, today),
    async (data) => {
      await record([receptionDraft(view, data, today)]);
    },
  );
  const scores = [0, 1, 2, 3] as const;
  const open = { value: "", says: say.chooseOne };
  const heeds = view.label.from === "D" || view.label.preservative === "dry" ? ["mask-for-dead-bees" as const] : [];
  const spirit = view.label.preservative === "ethanol-70" ? ["alcohol-flammable" as const] : [];
  return (
    <>
      <Answer text={say.receiveHead({ code: view.label.code })} under={say.receiveUnder} />
      <form className="form" onSubmit={onSubmit} noValidate>
        <fieldset>
          <legend>{say.receive}</legend>
          <TextField name="on" type="date" label={say.on} value={today} problems={problems} />
          <TextField
            name="takenOn"
            type="date"
            label={say.takenOn}
            value={view.label.takenOn ?? ""}
            needed
            problems={problems}
          />
          <ChoiceField
            name="condition"
            label={say.condition}
            problems={problems}
            needed
            choices={[
              open,
              ...scores.map((score) => ({
                value: String(score),
                says: say.conditionChoice({ score, says: say.conditions[score] }),
              })),
            ]}
          />
          <TextField
            name="beesReceived"
            label={say.beesReceived}
            hint={say.beesReceivedHint}
            numeric
            needed
            problems={problems}
          />
          <ChoiceField
            name="aliveWhenTaken"
            label={say.alive}
            hint={say.aliveHint}
            problems={problems}
            needed
            choices={[open, { value: "yes", says: say.yes }, { value: "no", says: say.no }]}
          />
          <ChoiceField
            name="acceptance"
            label={say.acceptance}
            hint={say.acceptanceHint}
            problems={problems}
            needed
            choices={[
              open,
              ...(["accepted", "accepted-with-limits", "rejected"] as const).map((value) => ({
                value,
                says: say.acceptances[value],
              })),
            ]}
          />
          <LongField name="reason" label={say.reason} hint={say.reasonHint} problems={problems} wide rows={2} />
        </fieldset>
        {[...heeds, ...spirit].map((caution) => (
          <p key={caution} className="note">
            {cautions[caution].words}
          </p>
        ))}
        <p className="acts">
          <button type="submit" className="press">
            {say.keepReceipt}
          </button>
        </p>
      </form>
    </>
  );
}

/** Two vials carry one code: this one gets another. */
export function Held({ view }: { readonly view: BenchView }) {
  const { casebook, record, today } = useCasebook();
  const say = words.bench;
  const apiary = casebook.cases[view.caseId]?.apiary;
  const district = (apiary ? settled(casebook.apiaries[apiary]?.record)?.place : null) ?? view.place;
  const taken = Object.values(casebook.specimens).flatMap(
    (specimen) => specimen.label?.candidates.map((each) => each.value.code) ?? [],
  );
  const [code = ""] = specimenCodes(district, Number(today.slice(0, 4)), taken, 1);
  return (
    <>
      <Answer text={`**${say.groups.held}.**`} under={say.heldNote({ code: view.label.code })} />
      <p className="acts">
        <button type="button" className="press" onClick={() => void record([relabelDraft(view, code, today)])}>
          {say.relabel({ code })}
        </button>
      </p>
    </>
  );
}
