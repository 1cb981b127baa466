/** On whose word a change is made: a source on record or none, where in it, how it was read. */
import type { Evidence } from "../../../knowledge/index.ts";
import type { Problem } from "../../../units/index.ts";
import { newOne, noneChosen, readMarks } from "../../model/index.ts";
import { ChoiceField, LongField, TextField } from "../parts/Form.tsx";
import { words } from "../whole-words.ts";

interface Props {
  readonly evidence: Evidence;
  /** The change is itself a source. */
  readonly isSource: boolean;
  readonly problems: readonly Problem[];
}

export function CitationFields({ evidence, isSource, problems }: Props) {
  const say = words.own;
  const sources = Object.values(evidence.sources)
    .map(({ key, authors, year, title }) => ({
      value: key,
      says: [authors, year, title].filter((each) => each !== null).join(", "),
    }))
    .sort((one, other) => one.says.localeCompare(other.says));
  return (
    <fieldset>
      <legend>{say.citationHead}</legend>
      <ChoiceField
        key={String(isSource)}
        name="source"
        label={say.source}
        problems={problems}
        wide
        value={isSource ? newOne : noneChosen}
        choices={[
          ...(isSource ? [{ value: newOne, says: say.sourceItself }] : []),
          { value: noneChosen, says: say.noSource },
          ...sources,
        ]}
      />
      <TextField name="at" label={say.at} problems={problems} needed />
      <ChoiceField
        key={`read ${isSource}`}
        name="read"
        label={say.read}
        problems={problems}
        value={isSource ? "seen" : "judgement"}
        choices={readMarks.map((value) => ({ value, says: words.evidence.marks[value] }))}
      />
      <LongField name="reason" label={say.reason} problems={problems} rows={2} wide />
    </fieldset>
  );
}
