/** Which cautions must stand beside an act of a plan. Their texts are kept in knowledge. */
import type { ControlId } from "./plan.ts";

/** Ids of the cautions a plan can call for. */
export type PlanCaution =
  | "label-is-law"
  | "supers-off"
  | "temperature-window"
  | "menthol-vapour"
  | "formic-acid"
  | "patties"
  | "sting-allergy"
  | "lifting";

/**
 * Cautions of an act, in the order they are to be read.
 *
 * @example
 * cautionsOf("oil-patty")  // → ["patties","sting-allergy","lifting"]
 */
export function cautionsOf(control: ControlId): readonly PlanCaution[] {
  const always = ["sting-allergy", "lifting"] as const;
  switch (control) {
    case "menthol":
      return ["label-is-law", "supers-off", "temperature-window", "menthol-vapour", ...always];
    case "formic-acid":
      return ["label-is-law", "supers-off", "temperature-window", "formic-acid", ...always];
    case "thymol":
    case "amitraz":
      return ["label-is-law", "supers-off", "temperature-window", ...always];
    case "oil-patty":
      return ["patties", ...always];
    case "requeen":
      return always;
  }
}
