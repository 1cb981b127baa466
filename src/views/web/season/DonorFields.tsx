/** The colony that is united with this one: which, its bees, its mites. Nothing stands in for what is not typed. */
import type { dynamics } from "../../../reasoning/index.ts";
import { type DonorOffered, donorChosen, isWhole, parseNumber, unknownDonor } from "../../model/index.ts";
import { seasonWords } from "../../words/index.ts";

interface Props {
  readonly action: dynamics.Uniting;
  readonly offered: readonly DonorOffered[];
  readonly change: (action: dynamics.Uniting) => void;
}

export function DonorFields({ action, offered, change }: Props) {
  const say = seasonWords.donor;
  const chosen = donorChosen(action, offered);
  const { start, counts = [] } = action.donor;
  const type = (typed: Partial<dynamics.CourseStart>) =>
    change({ ...action, donor: { ...action.donor, start: { ...start, ...typed } } });
  return (
    <div className="donor">
      {offered.length > 0 ? (
        <label className="stock">
          {say.which}{" "}
          <select
            value={chosen?.id ?? ""}
            onChange={({ target: { value } }) => {
              const other = offered.find(({ id }) => id === value);
              change({ ...action, donor: other?.donor ?? unknownDonor(action.from) });
            }}
          >
            {offered.map(({ id, code }) => (
              <option key={id} value={id}>
                {code}
              </option>
            ))}
            <option value="">{say.another}</option>
          </select>
        </label>
      ) : null}
      <NumberField
        key={`bees ${chosen?.id}`}
        label={`${say.bees} ${say.of({ date: start.date })}`}
        value={start.bees}
        take={(bees) => type({ bees })}
      />
      <NumberField
        key={`share ${chosen?.id}`}
        label={`${say.share} ${say.of({ date: start.date })}`}
        value={100 * start.infestedShare}
        take={(share) => type({ infestedShare: share / 100 })}
      />
      {isWhole(action) ? null : (
        <p className="trouble" role="status">
          {say.missing}
        </p>
      )}
      <p className="note">
        {counts.length > 0 ? say.counts({ counts: counts.map(seasonWords.countOn) }) : say.notCounted} {say.losses}
      </p>
    </div>
  );
}

/** Taken when one leaves it or presses Enter: half a number is not reckoned. */
function NumberField({
  label,
  value,
  take,
}: {
  readonly label: string;
  readonly value: number;
  readonly take: (value: number) => void;
}) {
  return (
    <label className="stock">
      {label}{" "}
      <input
        type="text"
        inputMode="decimal"
        size={7}
        defaultValue={Number.isFinite(value) ? String(Number(value.toFixed(2))) : ""}
        onBlur={({ target }) => {
          const typed = parseNumber(target.value) ?? Number.NaN;
          if (!Object.is(typed, value)) take(typed);
        }}
        onKeyDown={({ key, currentTarget }) => {
          if (key === "Enter") currentTarget.blur();
        }}
      />
    </label>
  );
}
