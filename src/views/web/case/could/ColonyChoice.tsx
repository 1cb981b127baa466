/** Which colony is reckoned: one run a colony. */
import { words } from "../../words.ts";

interface Props {
  readonly colonies: readonly { readonly key: string; readonly code: string }[];
  readonly chosen: string;
  readonly choose: (key: string) => void;
}

export function ColonyChoice({ colonies, chosen, choose }: Props) {
  if (colonies.length < 2) return null;
  return (
    <fieldset className="colony-choice">
      <legend>{words.could.colonyOf}</legend>
      {colonies.map((colony) => (
        <label key={colony.key}>
          <input type="radio" name="colony" checked={colony.key === chosen} onChange={() => choose(colony.key)} />
          <span className="c">{colony.code}</span>
        </label>
      ))}
    </fieldset>
  );
}
