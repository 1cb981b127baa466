/** All controls, by id. */
import type { ControlFact } from "./control-fact.ts";
import { menthol } from "./menthol.ts";
import { otherControls } from "./others.ts";

export type { ControlFact, ControlStatement, ControlTopic } from "./control-fact.ts";

const records = { menthol, ...otherControls } as const;

/** Id of a control. */
export type ControlId = keyof typeof records;

/** Every control by its id: what sources report of it. No dose can be taken from here: a plan needs a label record. */
export const controls: { readonly [Id in ControlId]: ControlFact<Id> } = records;

/** Ids of all controls. */
export const controlIds: readonly ControlId[] = Object.keys(controls) as ControlId[];
