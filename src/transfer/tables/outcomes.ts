/** What became of the colonies. */
import { isInConflict } from "../../casebook/index.ts";
import type { BodyOf } from "../../journal/index.ts";
import { type Codes, caseIds, codesOf } from "./codes.ts";
import { tidy } from "./tidy.ts";

interface Row {
  readonly codes: Codes;
  readonly body: BodyOf<"outcome-recorded">;
  readonly inConflict: boolean;
}

/** One row a colony, day and value held. */
export const outcomes = tidy<Row>({
  name: "outcomes",
  says: "whether a colony was alive on a day",
  key: ["case", "colony", "on"],
  columns: [
    { name: "case", type: "string", says: "Code of the case.", of: ({ codes }) => codes.kase },
    { name: "apiary", type: "string", says: "Code of the apiary.", of: ({ codes }) => codes.apiary },
    { name: "colony", type: "string", says: "Code of the colony.", of: ({ codes, body }) => codes.colony(body.colony) },
    { name: "on", type: "date", says: "Day on which it was seen.", of: ({ body }) => body.on },
    { name: "survived", type: "boolean", says: "Whether the colony was alive.", of: ({ body }) => body.survived },
    {
      name: "in_conflict",
      type: "boolean",
      says: "Two people's words stand here side by side, unsettled.",
      of: ({ inConflict }) => inConflict,
    },
  ],
  rows: (casebook) =>
    caseIds(casebook).flatMap((id) => {
      const codes = codesOf(casebook, id);
      return Object.values(casebook.cases[id]?.outcomes ?? {}).flatMap((days) =>
        Object.values(days).flatMap((kept) =>
          kept.candidates.map(({ value: body }) => ({ codes, body, inConflict: isInConflict(kept) })),
        ),
      );
    }),
});
