/** What was seen. */
import { type Candidate, isInConflict, wholeApiary } from "../../casebook/index.ts";
import type { FindingState } from "../../journal/index.ts";
import { type Codes, caseIds, codesOf } from "./codes.ts";
import { tidy } from "./tidy.ts";

interface Row {
  readonly codes: Codes;
  readonly colony: string;
  readonly finding: string;
  readonly held: Candidate<FindingState>;
  readonly inConflict: boolean;
}

/** One row a finding and value held: two values in one place are two rows, both marked as in conflict. */
export const findings = tidy<Row>({
  name: "findings",
  says: "a finding of a colony, or of the whole apiary, as somebody wrote it down",
  key: ["case", "colony", "finding"],
  columns: [
    { name: "case", type: "string", says: "Code of the case.", of: (row) => row.codes.kase },
    { name: "apiary", type: "string", says: "Code of the apiary.", of: (row) => row.codes.apiary },
    {
      ...{ name: "colony", type: "string", says: `Code of the colony, or ${wholeApiary}.` },
      of: (row) => (row.colony === wholeApiary ? wholeApiary : row.codes.colony(row.colony)),
    },
    { name: "finding", type: "string", says: "Id of the finding, as the evidence has it.", of: (row) => row.finding },
    {
      ...{ name: "state", type: "string", says: "What was seen. Not looked for is not absent." },
      words: ["present", "absent", "not-looked"],
      of: (row) => row.held.value,
    },
    { name: "on", type: "date", says: "Day on which it was seen.", of: (row) => row.held.at },
    { name: "by", type: "string", says: "Who wrote it down.", of: (row) => row.held.author },
    {
      ...{ name: "in_conflict", type: "boolean", says: "Two people's words stand here side by side, unsettled." },
      of: (row) => row.inConflict,
    },
    { name: "entry", type: "string", says: "Id of the entry in the journal.", of: (row) => row.held.entry },
  ],
  rows: (casebook) =>
    caseIds(casebook).flatMap((id) => {
      const codes = codesOf(casebook, id);
      return Object.entries(casebook.cases[id]?.findings ?? {}).flatMap(([colony, found]) =>
        Object.entries(found).flatMap(([finding, kept]) =>
          kept.candidates.map((held) => ({ codes, colony, finding, held, inConflict: isInConflict(kept) })),
        ),
      );
    }),
});
