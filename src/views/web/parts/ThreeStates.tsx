/** Present, absent, not looked: three buttons, the one that holds is pressed. */
import type { FindingState } from "../../../journal/index.ts";
import { Mark, type MarkState } from "./Mark.tsx";

export const threeStates: readonly FindingState[] = ["present", "absent", "not-looked"];

interface Props {
  readonly of: string;
  readonly state: MarkState;
  readonly answer: (state: FindingState) => void;
  /** The words on the buttons. */
  readonly says: Readonly<Record<FindingState, string>>;
}

export function ThreeStates({ of, state, answer, says }: Props) {
  return (
    <fieldset className="three">
      <legend className="vh">{of}</legend>
      {threeStates.map((each) => (
        <button key={each} type="button" aria-pressed={state === each} onClick={() => answer(each)}>
          <Mark state={each} />
          {says[each]}
        </button>
      ))}
    </fieldset>
  );
}
