/** Sentences of the reckoner's first page; what each method says stands with the methods. */
export const reckoner = {
  title: "Reckoner",
  answer: "**Reckon without a case.** Nothing here is kept.",
};
