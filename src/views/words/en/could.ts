/** Sentences of the could pages. */
export const could = {};
