/** Sentences of the list of cases. */
export const cases = {
  none: "**No cases yet.** Open a case, or open the demonstration casebook.",
};
