/** What lives around the apiary: pests that are here, elsewhere or unknown change how likely a cause is before any sign. */
import { useState } from "react";
import { type ApiaryView, readRegionForm, regionChoices } from "../../model/index.ts";
import { ChoiceField, TextField, useForm } from "../parts/Form.tsx";
import { Rich } from "../parts/Rich.tsx";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";

export function Region({ view }: { readonly view: ApiaryView }) {
  const say = words.apiaries;
  const [telling, setTelling] = useState(false);
  return (
    <section id="region" aria-labelledby="h-region">
      <h2 id="h-region">{say.regionHead}</h2>
      <p className={view.region ? undefined : "q2"}>
        <Rich text={view.region ? say.regionSays(view.region) : say.noRegion} />
      </p>
      {telling ? (
        <RegionForm view={view} done={() => setTelling(false)} />
      ) : (
        <p>
          <button type="button" className="act" onClick={() => setTelling(true)}>
            {view.region ? say.changeRegion : say.tellRegion}
          </button>
        </p>
      )}
    </section>
  );
}

function RegionForm({ view, done }: { readonly view: ApiaryView; readonly done: () => void }) {
  const { record, today } = useCasebook();
  const say = words.apiaries;
  const { problems, onSubmit } = useForm(readRegionForm, async (data) => {
    await record([{ kind: "region-recorded", at: today, about: [view.id], replaces: view.regionEntries, data }]);
    done();
  });
  return (
    <form className="form" onSubmit={onSubmit} noValidate>
      <fieldset>
        <legend className="vh">{say.regionHead}</legend>
        {regionChoices.map(({ name, values }) => (
          <ChoiceField
            key={name}
            name={name}
            label={say.pest({ name })}
            problems={problems}
            value={view.region?.[name] ?? values[0]}
            choices={values.map((value) => ({ value, says: say.regionStates[value] }))}
          />
        ))}
        <TextField
          name="source"
          label={say.source}
          hint={say.regionSourceHint}
          problems={problems}
          value={view.region?.source}
        />
      </fieldset>
      <p className="acts">
        <button type="submit" className="press quiet">
          {say.keepRegion}
        </button>
      </p>
    </form>
  );
}
