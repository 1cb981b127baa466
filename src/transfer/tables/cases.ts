/** Cases: what was asked, whom each waits on, how it ended. Who called, and in what words, is left out. */
import { type CaseState, coloniesOf } from "../../casebook/index.ts";
import { caseIds, codesOf, first } from "./codes.ts";
import { tidy } from "./tidy.ts";

interface Row {
  readonly state: CaseState;
  readonly codes: ReturnType<typeof codesOf>;
  readonly colonies: number;
}

/** One row a case; where two people's words stand side by side, the first by id of entry. */
export const cases = tidy<Row>({
  name: "cases",
  says: "a case, as it stands now",
  key: ["case"],
  columns: [
    { name: "case", type: "string", says: "Code of the case.", of: (row) => row.codes.kase },
    { name: "apiary", type: "string", says: "Code of the apiary.", of: (row) => row.codes.apiary },
    {
      name: "opened_on",
      type: "date",
      says: "Day of the call.",
      of: ({ state }) => first(state.record)?.openedOn ?? null,
    },
    {
      name: "question",
      type: "string",
      says: "What is asked.",
      of: ({ state }) => first(state.record)?.question ?? null,
    },
    { name: "colonies", type: "integer", says: "Colonies on record for the case.", of: (row) => row.colonies },
    {
      ...{ name: "decision", type: "string", words: ["act-now", "test-first", "wait"], says: "What was decided." },
      of: ({ state }) => first(state.decision)?.choice ?? null,
    },
    {
      name: "decided_on",
      type: "date",
      says: "Day of the decision.",
      of: ({ state }) => first(state.decision)?.on ?? null,
    },
    {
      name: "closed_on",
      type: "date",
      says: "Day of the closing; empty while it is open.",
      of: ({ state }) => first(state.closed)?.on ?? null,
    },
    {
      ...{ name: "outcome", type: "string", words: ["answered", "without-answer"], says: "How it was closed." },
      of: ({ state }) => first(state.closed)?.outcome ?? null,
    },
    {
      ...{ name: "confirmed_causes", type: "string", says: "Ids of the confirmed causes, parted by spaces." },
      of: ({ state }) => first(state.closed)?.confirmedCauses.join(" ") || null,
    },
  ],
  rows: (casebook) =>
    caseIds(casebook).flatMap((id) => {
      const state = casebook.cases[id];
      return state ? [{ state, codes: codesOf(casebook, id), colonies: coloniesOf(casebook, id).length }] : [];
    }),
});
