/** Colonies to tick, as fields named `colony:` and their id. */
import type { CaseColony } from "../../../../casebook/index.ts";
import { words } from "../../words.ts";

interface Props {
  readonly colonies: readonly CaseColony[];
  readonly ticked: readonly string[];
  readonly onChange?: (ticked: readonly string[]) => void;
}

export function ColonyTicks({ colonies, ticked, onChange }: Props) {
  return (
    <fieldset
      className="wide ticks"
      onChange={(event) => {
        const boxes = event.currentTarget.querySelectorAll<HTMLInputElement>("input:checked");
        onChange?.([...boxes].map((box) => box.value));
      }}
    >
      <legend>{words.done.colonies}</legend>
      {colonies.map((colony) => (
        <label key={colony.id} className="tick">
          <input
            type="checkbox"
            name={`colony:${colony.id}`}
            value={colony.id}
            defaultChecked={ticked.includes(colony.id)}
          />{" "}
          <span className="c">{colony.code ?? colony.id}</span>
        </label>
      ))}
    </fieldset>
  );
}
