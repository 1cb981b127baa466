/** What a control is: what was reported of it, never what to give. */

import type { CautionId } from "../cautions.ts";
import type { Citations } from "../fact.ts";
import type { DoseReport, Figure, Span } from "../figure.ts";

/** What a statement about a control speaks of. */
export type ControlTopic =
  | "dose-reported"
  | "temperature"
  | "duration"
  | "placement"
  | "season"
  | "supers"
  | "speed"
  | "efficacy"
  | "no-benefit"
  | "side-effect"
  | "residue"
  | "margin"
  | "resistance"
  | "mode"
  | "recipe"
  | "stock"
  | "status";

/** One thing a source says of a control. */
export interface ControlStatement {
  readonly topic: ControlTopic;
  readonly words: string;
  /** A dose can only be a report. */
  readonly figure: Figure | Span | DoseReport | null;
  readonly citations: Citations;
}

/** A way to act against tracheal mites. It holds no dose: a plan needs a label record. */
export interface ControlFact<Id extends string = string> {
  readonly id: Id;
  readonly term: string;
  /** How it acts: as vapour its rate hangs on temperature. */
  readonly kind: "vapour" | "patty" | "queen" | "contact";
  readonly activeIngredients: readonly string[];
  /** True where nothing may be planned without a label record. */
  readonly needsLabelRecord: boolean;
  readonly cautions: readonly CautionId[];
  readonly statements: readonly ControlStatement[];
}
