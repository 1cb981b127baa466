/** How the programme reasons: what closed cases may change, and when a cause is named; tried on past cases first. */
import { type FormEvent, useState } from "react";
import { evidenceOf } from "../../../casebook/index.ts";
import { nothingWrongShare } from "../../../knowledge/index.ts";
import { differential } from "../../../reasoning/index.ts";
import type { Problem } from "../../../units/index.ts";
import { readSettings, settingsDraft, settingsEntries, settingsFrom, withdrawChangeDraft } from "../../model/index.ts";
import { fieldsOf, LongField, TextField } from "../parts/Form.tsx";
import { useCasebook } from "../store/context.ts";
import { words } from "../whole-words.ts";
import { Trial, Working } from "./Trial.tsx";
import { useTrial } from "./use-trial.ts";

type Body = Extract<ReturnType<typeof readSettings>, { readonly ok: true }>["value"];

/** A share as it is typed, of 100. */
const typed = (share: number | null | undefined): string | undefined =>
  share === null || share === undefined ? undefined : String(Number((100 * share).toPrecision(12)));

export function Settings() {
  const { casebook, programme, record, today } = useCasebook();
  const { view, working, hasFailed, ask, forget } = useTrial(({ after }) => after.evidence);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [tried, setTried] = useState<Body | null>(null);
  const say = words.own;
  const { settings } = evidenceOf(casebook);
  const { thresholds, nothingWrong, experience } = settings;
  const entries = settingsEntries(casebook, programme);
  const standard = differential.defaultThresholds;

  const tryIt = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const read = readSettings(fieldsOf(event.currentTarget), today);
    setProblems(read.ok ? [] : read.problems);
    if (!read.ok) return;
    setTried(read.value);
    ask({ settings: settingsFrom(read.value) });
  };
  const keep = async () => {
    if (!tried) return;
    await record([settingsDraft(casebook, programme, tried, today)]);
    forget();
  };
  return (
    <section aria-labelledby="h-settings">
      <h2 id="h-settings">{say.settingsHead}</h2>
      <p className="q2">{say.settingsUnder}</p>
      <form key={entries.join(" ")} className="form flush" onSubmit={tryIt} onChange={forget} noValidate>
        <fieldset className="ticks">
          <legend>{say.learns}</legend>
          <Tick name="frequencies" says={say.frequencies} isOn={experience.frequencies} />
          <Tick name="healthyRates" says={say.healthyRates} isOn={experience.healthyRates} />
          <Tick name="priors" says={say.priors} isOn={experience.priors} />
          <p className="hint">{say.priorsHint}</p>
        </fieldset>
        <fieldset>
          <legend className="vh">{say.settingsHead}</legend>
          <TextField
            name="strength"
            label={say.strength}
            hint={say.strengthHint}
            problems={problems}
            numeric
            value={String(experience.strength)}
          />
          <TextField
            name="leading"
            label={say.leading}
            hint={say.leadingHint({ standard: standard.leading })}
            problems={problems}
            numeric
            unit={say.of100Unit}
            value={typed(thresholds.leading)}
          />
          <TextField
            name="open"
            label={say.open}
            hint={say.openHint({ standard: standard.open })}
            problems={problems}
            numeric
            unit={say.of100Unit}
            value={typed(thresholds.open)}
          />
          <TextField
            name="nothingWrong"
            label={say.nothingWrong}
            hint={say.nothingWrongHint({ standard: nothingWrongShare })}
            problems={problems}
            numeric
            unit={say.of100Unit}
            value={typed(nothingWrong)}
          />
          <LongField name="reason" label={say.reason} problems={problems} rows={2} wide />
        </fieldset>
        <p className="acts">
          <button type="submit" className="press quiet">
            {say.tryIt}
          </button>
          {entries.length > 0 ? (
            <button
              type="button"
              className="act"
              onClick={() => void record(entries.map((entry) => withdrawChangeDraft(programme, entry, today)))}
            >
              {say.settingsBack}
            </button>
          ) : null}
        </p>
      </form>
      <Working share={working} />
      {hasFailed ? <p role="alert">{say.failed}</p> : null}
      {view && tried ? (
        <>
          <Trial view={view} />
          <p className="acts">
            <button type="button" className="press" onClick={() => void keep()}>
              {say.keepSettings}
            </button>
          </p>
        </>
      ) : null}
    </section>
  );
}

function Tick({ name, says, isOn }: { readonly name: string; readonly says: string; readonly isOn: boolean }) {
  return (
    <label className="tick">
      <input type="checkbox" name={name} defaultChecked={isOn} />
      {says}
    </label>
  );
}
