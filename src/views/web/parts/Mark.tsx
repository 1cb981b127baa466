/** The mark of a state: filled, open with a bar, dotted; a small dot while nobody asked; two halves when people differ. */
import type { FindingState } from "../../../journal/index.ts";

export type MarkState = FindingState | "conflict" | null;

const classes: Readonly<Record<FindingState | "conflict", string>> = {
  present: "m present",
  absent: "m absent",
  "not-looked": "m unlooked",
  conflict: "m conflict",
};

export function Mark({ state }: { readonly state: MarkState }) {
  return <i className={state === null ? "m none" : classes[state]} aria-hidden="true" />;
}
