/** Right hand or left: where the buttons of the walk lie. */
import { words } from "../../words.ts";
import { chooseHand, useHand } from "./hand.ts";

const hands = ["right", "left"] as const;

export function HandChoice() {
  const hand = useHand();
  const say = words.seen;
  return (
    <fieldset className="hands">
      <legend className="vh">{say.hand}</legend>
      {hands.map((each) => (
        <label key={each} className="tick">
          <input type="radio" name="hand" checked={hand === each} onChange={() => chooseHand(each)} />
          {say.hands[each]}
        </label>
      ))}
    </fieldset>
  );
}
