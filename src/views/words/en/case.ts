/** Sentences of the case page: the six questions. */
export const caseWords = {
  questions: {
    1: "What was seen?",
    2: "What could it be?",
    3: "What would tell?",
    4: "What was found?",
    5: "What shall be done?",
    6: "Did it work?",
  },
};
