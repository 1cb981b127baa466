/** Which cautions must stand beside an act of a plan. */
import { type CautionId, type ControlId, cautionsFor, controls } from "../../knowledge/index.ts";

/** Ids of the cautions of a control, in the order they are to be read: its own, then those of any work in the field. */
export const cautionsOf = (control: ControlId): readonly CautionId[] => [
  ...controls[control].cautions,
  ...cautionsFor("field-visit"),
];
