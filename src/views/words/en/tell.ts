/** Sentences of the tell pages. */
export const tell = {};
