/** Present, absent, not looked: three buttons, the one that holds is pressed. */
import type { FindingState } from "../../../journal/index.ts";
import { words } from "../words.ts";
import { Mark, type MarkState } from "./Mark.tsx";

export const threeStates: readonly FindingState[] = ["present", "absent", "not-looked"];

interface Props {
  readonly of: string;
  readonly state: MarkState;
  readonly answer: (state: FindingState) => void;
}

export function ThreeStates({ of, state, answer }: Props) {
  return (
    <fieldset className="three">
      <legend className="vh">{of}</legend>
      {threeStates.map((each) => (
        <button key={each} type="button" aria-pressed={state === each} onClick={() => answer(each)}>
          <Mark state={each} />
          {words.seen.states[each]}
        </button>
      ))}
    </fieldset>
  );
}
