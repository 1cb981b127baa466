/** The vignettes as they lie here, theme by theme. */
import adultDiseases from "./adult-diseases.json" with { type: "json" };
import brood from "./brood.json" with { type: "json" };
import foodAndWinter from "./food-and-winter.json" with { type: "json" };
import nothingWrong from "./nothing-wrong.json" with { type: "json" };
import pestsRobbingAndLoss from "./pests-robbing-and-loss.json" with { type: "json" };
import poisonsAndInjury from "./poisons-and-injury.json" with { type: "json" };
import queens from "./queens.json" with { type: "json" };
import trachealMites from "./tracheal-mites.json" with { type: "json" };
import varroaAndViruses from "./varroa-and-viruses.json" with { type: "json" };

export type Expectation =
  | { readonly kind: "leads"; readonly oneOf: readonly string[] }
  | { readonly kind: "in-first"; readonly within: number; readonly all: readonly string[] }
  | { readonly kind: "cannot-tell" };

export interface Vignette {
  readonly id: string;
  readonly form: string;
  readonly story: string;
  readonly source: {
    readonly title: string;
    readonly year: number | null;
    readonly where: string;
    readonly address: string | null;
    readonly read: string;
  };
  readonly input: {
    readonly colony: { readonly state: string };
    readonly findings: Readonly<Record<string, string>>;
    readonly tests?: readonly { readonly test: string; readonly positive?: number; readonly examined?: number }[];
  };
  readonly truth: readonly string[];
  readonly expect: Expectation;
  readonly notices: readonly string[];
  readonly notes: readonly string[];
}

export const vignettes = [
  trachealMites,
  varroaAndViruses,
  adultDiseases,
  brood,
  foodAndWinter,
  queens,
  poisonsAndInjury,
  pestsRobbingAndLoss,
  nothingWrong,
].flatMap((file) => file.cases as unknown as readonly Vignette[]);

