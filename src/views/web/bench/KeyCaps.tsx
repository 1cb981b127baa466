/** What each key does: as a legend, and as buttons for fingers. */
import { type BenchState, type KeyAction, type KeyMap, leftHand, numericPad } from "../../model/index.ts";
import { words } from "../words.ts";
import type { Pad } from "./settings.ts";
import type { Press } from "./use-bench.ts";

export const mapOf = (pad: Pad): KeyMap => (pad === "left" ? { ...leftHand, Enter: "confirm" } : numericPad);

/** What stands on the cap of a key. */
export function capOf(key: string): string {
  const { keyNames } = words.bench;
  return key === " " ? keyNames.space : key === "Enter" ? keyNames.enter : key === "-" ? "−" : key.toUpperCase();
}

/** The keys of a map in the order of the legend; a second key for the same act is left out. */
function acts(keys: KeyMap): readonly { readonly key: string; readonly action: KeyAction }[] {
  const order = Object.keys(words.bench.legend) as KeyAction[];
  return order.flatMap((action) => {
    const key = Object.keys(keys).find((each) => keys[each] === action);
    return key === undefined ? [] : [{ key, action }];
  });
}

export function Legend({ keys, milliseconds }: { readonly keys: KeyMap; readonly milliseconds: number }) {
  const say = words.bench;
  return (
    <div className="legend">
      <dl>
        {acts(keys).map(({ key, action }) => (
          <div key={action}>
            <dt>
              <kbd className="cap">{capOf(key)}</kbd>
            </dt>
            <dd>{say.legend[action]}</dd>
          </div>
        ))}
      </dl>
      <p>{say.legendNote({ milliseconds })}</p>
    </div>
  );
}

/** Acts a finger needs while the right trunk is asked; the others settle a whole bee. */
const forRight: readonly KeyAction[] = [
  "clear",
  "mites",
  "mites-blotches",
  "mites-dark",
  "dark-right",
  "unreadable",
  "lost",
  "undo",
  "flag",
];

/** Acts that have a button of their own beside the keys, where they can be done at all. */
const elsewhere: readonly KeyAction[] = ["take-back", "confirm"];

/**
 * Buttons that press the keys of the number pad. Each keeps its place and its size whichever trunk is asked: one that
 * means nothing now is off, and none moves under a finger.
 */
export function TouchKeys({ state, press }: { readonly state: BenchState; readonly press: (press: Press) => void }) {
  const say = words.bench;
  const keys = numericPad;
  const shown = acts(keys).filter(({ action }) => !elsewhere.includes(action));
  return (
    <ul className="touch-keys" aria-label={say.keys}>
      {shown.map(({ key, action }) => (
        <li key={action} data-act={action}>
          <button
            type="button"
            disabled={state.asked === "right" && !forRight.includes(action)}
            onClick={(event) => press({ key, at: event.timeStamp })}
            aria-pressed={action === "flag" ? state.flagged : undefined}
          >
            <span className="key" aria-hidden="true">
              {capOf(key)}
            </span>
            {state.asked === "right" && (action === "clear" || action === "dark-right")
              ? say.legendRight[action]
              : say.legend[action]}
          </button>
        </li>
      ))}
    </ul>
  );
}
