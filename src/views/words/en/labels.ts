/** Sentences of the labels pages. */
export const labels = {};
