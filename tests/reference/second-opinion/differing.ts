/** Where R is right by another convention, with the reason; and the methods it was not asked. Anything else must agree. */

/** One field of one case that differs. */
export interface Differing {
  readonly id: string;
  readonly field: string;
  readonly reason: string;
}

export const differing: readonly Differing[] = [
  {
    id: "uncond_vacc",
    field: "barnard_p",
    reason:
      "The table has a tie. The case keeps the p-value of a program that compares statistics without slack and loses the tie to rounding; R counts it, and so does the library unless told otherwise.",
  },
];

/** Methods that are one line of arithmetic or of which the R packages at hand know none: R would repeat the same line. */
export const notAsked: Readonly<Record<string, string>> = {
  ci_agresti_coull: "closed formula",
  expected_utilities: "closed formula; the thresholds that follow from it are asked",
  gwet_ac1: "in none of the packages",
  lang_reiczigel: "closed formula, in none of the packages",
  n_clusters_for_precision: "closed formula",
  n_detect_cannon_roe: "closed shortcut; the exact sizes are asked",
  naive_bayes_single: "closed formula",
  schneider_orelli: "closed formula",
  sprt_wald_oc_asn: "closed approximation; the exact recursion is asked",
  sun_shepard: "closed formula",
};
