/** Sentences of the seen pages. */
export const seen = {};
