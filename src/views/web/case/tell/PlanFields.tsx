/** The fields of a sample's plan. */

import { problem } from "../../../../units/index.ts";
import type { BodyOfBees, ColonyRef, SampleForm } from "../../../model/index.ts";
import { ChoiceField, TextField } from "../../parts/Form.tsx";
import { words } from "../../words.ts";

/** What is typed, before it is read as shares. */
export interface Typed {
  readonly purpose: SampleForm["purpose"];
  readonly colonies: readonly string[];
  readonly design: string;
  readonly confidence: string;
  readonly sensitivity: string;
  /** Empty: where the plan advises. */
  readonly from: BodyOfBees | "";
  readonly preservative: SampleForm["preservative"];
  readonly laboratory: string;
}

interface Props {
  readonly typed: Typed;
  readonly change: (typed: Typed) => void;
  readonly colonies: readonly ColonyRef[];
  /** Where the plan advises to take the bees; null while there is no plan. */
  readonly advised: BodyOfBees | null;
  readonly isShare: (text: string) => boolean;
}

export function PlanFields({ typed, change, colonies, advised, isShare }: Props) {
  const say = words.tell.plan;
  const outside = (name: "design" | "confidence" | "sensitivity") =>
    isShare(typed[name]) && !(name === "confidence" && Number(typed[name]) >= 100)
      ? []
      : [
          problem("field-out-of-range", "blocked", name, {
            slots: { given: typed[name], min: 1, max: name === "confidence" ? 99 : 100, unit: "" },
          }),
        ];
  const choices = <Key extends string>(all: Readonly<Record<Key, string>>) =>
    (Object.keys(all) as Key[]).map((value) => ({ value, says: all[value] }));
  return (
    <div className="form plan-fields">
      <ChoiceField
        name="purpose"
        label={say.purpose}
        problems={[]}
        value={typed.purpose}
        choices={choices(say.purposes)}
        onChoose={(purpose) => change({ ...typed, purpose: purpose as Typed["purpose"] })}
      />
      <fieldset className="ticks">
        <legend>{say.colonies}</legend>
        {colonies.map((colony) => (
          <label key={colony.id} className="tick">
            <input
              type="checkbox"
              checked={typed.colonies.includes(colony.id)}
              onChange={(event) =>
                change({
                  ...typed,
                  colonies: event.target.checked
                    ? [...typed.colonies, colony.id]
                    : typed.colonies.filter((id) => id !== colony.id),
                })
              }
            />
            <span className="c">{colony.code}</span>
          </label>
        ))}
      </fieldset>
      <TextField
        name="design"
        label={say.design}
        hint={say.designHint}
        numeric
        unit={say.inHundred}
        problems={outside("design")}
        value={typed.design}
        onType={(design) => change({ ...typed, design })}
      />
      <TextField
        name="confidence"
        label={say.confidence}
        numeric
        unit={say.inHundred}
        problems={outside("confidence")}
        value={typed.confidence}
        onType={(confidence) => change({ ...typed, confidence })}
      />
      <TextField
        name="sensitivity"
        label={say.sensitivity}
        hint={say.sensitivityHint}
        numeric
        unit={say.inHundred}
        problems={outside("sensitivity")}
        value={typed.sensitivity}
        onType={(sensitivity) => change({ ...typed, sensitivity })}
      />
      <ChoiceField
        name="from"
        label={say.place}
        problems={[]}
        value={typed.from === advised ? "" : typed.from}
        choices={[
          { value: "", says: advised ? say.asAdvised({ from: say.from[advised] }) : "" },
          ...choices(say.from).filter((choice) => choice.value !== advised),
        ]}
        onChoose={(from) => change({ ...typed, from: from as Typed["from"] })}
      />
      <ChoiceField
        name="preservative"
        label={say.preservative}
        problems={[]}
        value={typed.preservative}
        choices={choices(say.preservatives)}
        onChoose={(preservative) => change({ ...typed, preservative: preservative as Typed["preservative"] })}
      />
      <TextField
        name="laboratory"
        label={say.laboratory}
        hint={say.laboratoryHint}
        problems={[]}
        value={typed.laboratory}
        onType={(laboratory) => change({ ...typed, laboratory })}
      />
    </div>
  );
}
