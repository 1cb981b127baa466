/** Sentences of the apiaries pages. */
export const apiaries = {};
