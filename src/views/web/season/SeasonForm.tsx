/** What a season is reckoned from: the start, the counts, the days asked about, the line. */
import { useRef } from "react";
import type { Problem } from "../../../units/index.ts";
import type { ColonySeason, Fields } from "../../model/index.ts";
import { readSeason, type SeasonAsk } from "../../model/index.ts";
import { seasonWords } from "../../words/index.ts";
import { ChoiceField, LongField, TextField, useForm } from "../parts/Form.tsx";

interface Props {
  readonly colony: ColonySeason | null;
  readonly fields: Fields;
  /** What the reasoning found wrong, by the field it stands in. */
  readonly unfit: readonly Problem[];
  readonly take: (ask: SeasonAsk, fields: Fields) => void;
}

export function SeasonForm({ colony, fields, unfit, take }: Props) {
  const say = seasonWords;
  const typed = useRef<Fields>(fields);
  const { problems: own, onSubmit } = useForm(
    (now) => {
      typed.current = now;
      return readSeason(now, colony);
    },
    (ask) => {
      take(ask, typed.current);
      // The values stay, so that one can be changed alone.
      return "stays";
    },
  );
  const problems = [...own, ...unfit];
  const shared = { problems };
  return (
    <form className="form flush" onSubmit={onSubmit} noValidate>
      <fieldset>
        <legend className="vh">{say.fromHead}</legend>
        <TextField
          {...shared}
          name="start"
          type="date"
          label={say.start}
          hint={say.startHint}
          needed
          value={fields.start}
        />
        <TextField {...shared} name="bees" label={say.bees} hint={say.beesHint} numeric needed value={fields.bees} />
        <TextField
          {...shared}
          name="share"
          label={say.share}
          hint={say.shareHint}
          numeric
          needed
          value={fields.share}
        />
        <ChoiceField
          {...shared}
          name="brood"
          label={say.brood}
          value={fields.brood}
          choices={(["usual", "none"] as const).map((value) => ({ value, says: say.broods[value] }))}
        />
        <LongField
          {...shared}
          name="counts"
          label={say.counts}
          hint={say.countsHint}
          wide
          rows={4}
          value={fields.counts}
        />
        <LongField {...shared} name="sizes" label={say.sizes} hint={say.sizesHint} wide rows={2} value={fields.sizes} />
        <TextField
          {...shared}
          name="decideOn"
          type="date"
          label={say.decideOn}
          hint={say.decideOnHint}
          needed
          value={fields.decideOn}
        />
        <TextField {...shared} name="until" type="date" label={say.until} needed value={fields.until} />
        <TextField {...shared} name="line" label={say.line} hint={say.lineHint} numeric needed value={fields.line} />
        <TextField {...shared} name="moreBees" label={say.moreBees} numeric needed value={fields.moreBees} />
        <TextField
          {...shared}
          name="stock"
          label={say.susceptibility}
          hint={say.susceptibilityHint}
          numeric
          needed
          value={fields.stock}
        />
        {colony ? null : (
          <>
            <TextField {...shared} name="latitude" label={say.latitude} numeric unit="°" value={fields.latitude} />
            <LongField
              {...shared}
              name="means"
              label={say.means}
              hint={say.meansHint}
              wide
              rows={2}
              value={fields.means}
            />
          </>
        )}
      </fieldset>
      <p className="acts">
        <button type="submit" className="press">
          {say.reckon}
        </button>
      </p>
    </form>
  );
}
