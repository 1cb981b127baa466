/** The bench keyboard: one key a bee where one key can say it. Pure: keys and times come in, bees come out. */
import type { Trunk } from "../../../journal/index.ts";

/** What a key means before one knows which trunk is asked. */
export type KeyAction =
  | "clear"
  | "mites"
  | "mites-blotches"
  | "mites-dark"
  | "right-mites"
  | "right-mites-blotches"
  | "right-mites-dark"
  | "left-only-mites"
  | "both-mites"
  | "dark-left"
  | "dark-right"
  | "unreadable"
  | "lost"
  | "repeat"
  | "undo"
  | "flag"
  | "take-back"
  | "confirm";

export type KeyMap = Readonly<Record<string, KeyAction>>;

/** Numeric pad, the default. `5` is far from `0`, so that a lost bee is not pressed by haste. */
export const numericPad: KeyMap = {
  "0": "clear",
  "1": "mites",
  "2": "mites-blotches",
  "3": "mites-dark",
  "7": "right-mites",
  "8": "right-mites-blotches",
  "9": "right-mites-dark",
  "4": "dark-left",
  "6": "dark-right",
  ".": "unreadable",
  ",": "unreadable",
  "5": "lost",
  "+": "repeat",
  "-": "undo",
  "*": "flag",
  "/": "take-back",
  Enter: "confirm",
};

/** The left hand alone, for a right hand that stays on the forceps. */
export const leftHand: KeyMap = {
  " ": "clear",
  d: "left-only-mites",
  f: "right-mites",
  a: "both-mites",
  s: "dark-left",
  x: "unreadable",
  v: "lost",
  r: "repeat",
  z: "undo",
  g: "flag",
  q: "take-back",
};

/** A bee as it was read. */
export interface ReadBee {
  readonly lost: boolean;
  readonly left: Trunk | null;
  readonly right: Trunk | null;
  readonly flagged: boolean;
}

export interface BenchState {
  /** Which trunk is asked now. */
  readonly asked: "left" | "right";
  /** The left trunk while the right one is asked. */
  readonly left: Trunk | null;
  readonly flagged: boolean;
  readonly last: ReadBee | null;
  /** The last press that counted: for telling a bounce. */
  readonly pressed: { readonly key: string; readonly at: number } | null;
  /** A press that was dropped, until it is taken back or another press counts. */
  readonly dropped: { readonly key: string; readonly why: "bounce" | "held" } | null;
}

export const freshBench: BenchState = {
  asked: "left",
  left: null,
  flagged: false,
  last: null,
  pressed: null,
  dropped: null,
};

export interface Press {
  readonly key: string;
  /** Milliseconds on any steady clock. */
  readonly at: number;
  /** The keyboard says that the key is held, or no key-up was seen since. */
  readonly held: boolean;
}

export type BenchEffect =
  | { readonly kind: "bee"; readonly bee: ReadBee }
  | { readonly kind: "undo-bee" }
  | { readonly kind: "asked" }
  | { readonly kind: "dropped"; readonly key: string; readonly why: "bounce" | "held" }
  | { readonly kind: "confirm" }
  | { readonly kind: "none" };

export interface BenchStep {
  readonly state: BenchState;
  readonly effect: BenchEffect;
}

/**
 * What one press does. A held key and the same key within `bounceMilliseconds` are dropped and said;
 * `take-back` makes a dropped press count after all. A key that means nothing here changes nothing.
 */
export function pressKey(
  state: BenchState,
  press: Press,
  keys: KeyMap = numericPad,
  bounceMilliseconds = 70,
): BenchStep {
  const action = keys[press.key] ?? keys[press.key.toLowerCase()];
  if (!action) return { state, effect: { kind: "none" } };
  if (action === "take-back") return takeBack(state, press, keys);
  const why = press.held ? "held" : isBounce(state, press, bounceMilliseconds) ? "bounce" : null;
  if (why)
    return { state: { ...state, dropped: { key: press.key, why } }, effect: { kind: "dropped", key: press.key, why } };
  return act({ ...state, pressed: { key: press.key, at: press.at }, dropped: null }, action);
}

const isBounce = (state: BenchState, press: Press, milliseconds: number): boolean =>
  state.pressed !== null && state.pressed.key === press.key && press.at - state.pressed.at < milliseconds;

function takeBack(state: BenchState, press: Press, keys: KeyMap): BenchStep {
  const action = state.dropped && (keys[state.dropped.key] ?? keys[state.dropped.key.toLowerCase()]);
  if (!state.dropped || !action) return { state, effect: { kind: "none" } };
  return act({ ...state, pressed: { key: state.dropped.key, at: press.at }, dropped: null }, action);
}

const rightOf: Readonly<Partial<Record<KeyAction, Trunk>>> = {
  clear: "clear",
  mites: "mites",
  "mites-blotches": "mites-blotches",
  "mites-dark": "mites-dark",
  "right-mites": "mites",
  "right-mites-blotches": "mites-blotches",
  "right-mites-dark": "mites-dark",
  "dark-left": "dark-no-mite",
  "dark-right": "dark-no-mite",
  unreadable: "unreadable",
};

/** Keys that settle the whole bee while the left trunk is asked. */
const wholeBee: Readonly<Partial<Record<KeyAction, readonly [Trunk, Trunk]>>> = {
  clear: ["clear", "clear"],
  "right-mites": ["clear", "mites"],
  "right-mites-blotches": ["clear", "mites-blotches"],
  "right-mites-dark": ["clear", "mites-dark"],
  "left-only-mites": ["mites", "clear"],
  "both-mites": ["mites", "mites"],
  "dark-right": ["clear", "dark-no-mite"],
};

const leftFirst: Readonly<Partial<Record<KeyAction, Trunk>>> = {
  mites: "mites",
  "mites-blotches": "mites-blotches",
  "mites-dark": "mites-dark",
  "dark-left": "dark-no-mite",
  unreadable: "unreadable",
};

function act(state: BenchState, action: KeyAction): BenchStep {
  if (action === "confirm") return { state, effect: { kind: "confirm" } };
  if (action === "flag") return { state: { ...state, flagged: !state.flagged }, effect: { kind: "asked" } };
  if (action === "undo") return undo(state);
  if (action === "lost") return finish(state, { lost: true, left: null, right: null, flagged: state.flagged });
  if (action === "repeat")
    return state.last ? finish(state, { ...state.last, flagged: state.flagged }) : { state, effect: { kind: "none" } };
  if (state.asked === "right") {
    const right = rightOf[action];
    return right
      ? finish(state, { lost: false, left: state.left, right, flagged: state.flagged })
      : { state, effect: { kind: "none" } };
  }
  const both = wholeBee[action];
  if (both) return finish(state, { lost: false, left: both[0], right: both[1], flagged: state.flagged });
  const left = leftFirst[action];
  return left
    ? { state: { ...state, asked: "right", left }, effect: { kind: "asked" } }
    : { state, effect: { kind: "none" } };
}

/** While the right trunk is asked, undo takes back the left one; else the last bee. */
function undo(state: BenchState): BenchStep {
  if (state.asked === "right") return { state: { ...state, asked: "left", left: null }, effect: { kind: "asked" } };
  return { state: { ...state, last: null, flagged: false }, effect: { kind: "undo-bee" } };
}

const finish = (state: BenchState, bee: ReadBee): BenchStep => ({
  state: { ...state, asked: "left", left: null, flagged: false, last: bee },
  effect: { kind: "bee", bee },
});

/** The bench as it stands when a reading is taken up again: nothing half read, the last bee ready to repeat. */
export const resumedBench = (last: ReadBee | null): BenchState => ({ ...freshBench, last });
