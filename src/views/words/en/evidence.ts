/** Sentences of the evidence pages: what is known, who says so, how it was read. */
import { some, whole } from "./numbers.ts";

export const evidence = {
  marks: {
    seen: "read in the source",
    memory: "from memory, not read again",
    "common-practice": "common practice, no source",
    judgement: "judgement",
    computed: "reckoned from what was read",
  },
  title: "Evidence",
  count: (slots: { readonly shown: number; readonly all: number }) =>
    slots.shown === slots.all ? some(slots.all, "record", "records") : `${whole(slots.shown)} of ${whole(slots.all)}`,
};
