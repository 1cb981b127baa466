/** Results of tests. */
import type { Candidate } from "../../casebook/index.ts";
import type { BodyOf } from "../../journal/index.ts";
import { type Codes, caseIds, codesOf } from "./codes.ts";
import { type Column, tidy } from "./tidy.ts";

type Body = BodyOf<"test-result-recorded">;

interface Row {
  readonly codes: Codes;
  readonly test: Candidate<Body>;
}

const counted = (name: string, says: string, of: keyof Body): Column<Row> => ({
  ...{ name, says, type: "integer" as const },
  of: ({ test }) => (test.value[of] as number | undefined) ?? null,
});

/** One row a test result; what was not counted is empty, never zero. */
export const tests = tidy<Row>({
  name: "tests",
  says: "the result of one test of one colony, or of the apiary, as it was written down",
  key: ["entry"],
  columns: [
    { name: "case", type: "string", says: "Code of the case.", of: (row) => row.codes.kase },
    { name: "apiary", type: "string", says: "Code of the apiary.", of: (row) => row.codes.apiary },
    {
      ...{ name: "colony", type: "string", says: "Code of the colony; empty where the result is of the apiary." },
      of: (row) => row.codes.colony(row.test.value.colony),
    },
    { name: "test", type: "string", says: "Id of the test, as the evidence has it.", of: (row) => row.test.value.test },
    { name: "on", type: "date", says: "Day on which it was read or reported.", of: (row) => row.test.value.on },
    counted("positive", "Bees found positive, of those examined.", "positive"),
    counted("examined", "Bees that could be read.", "examined"),
    counted("unreadable", "Further bees that could not be read.", "unreadable"),
    counted("mites", "Mites counted on the bees.", "mites"),
    counted("bees", "Bees on which the mites were counted.", "bees"),
    {
      ...{ name: "spores_millions_per_bee", type: "number", says: "Nosema spores, millions in a bee." },
      of: (row) => row.test.value.sporesMillionsPerBee ?? null,
    },
    {
      ...{ name: "result", type: "string", says: "Of a test that counts nothing." },
      words: ["found", "none-found", "unclear"],
      of: (row) => row.test.value.result ?? null,
    },
    {
      ...{ name: "which", type: "string", says: "Ids of what was found, parted by spaces, where the test can tell." },
      of: (row) => row.test.value.which?.join(" ") ?? null,
    },
    {
      ...{ name: "taken_from", type: "string", words: ["S", "E", "B", "F", "D"] },
      says: "Where the bees were taken: S super, E honey edge, B brood, F entrance, D dead.",
      of: (row) => row.test.value.takenFrom ?? null,
    },
    {
      ...{ name: "alive_when_taken", type: "boolean", says: "Whether the bees were alive when they were taken." },
      of: (row) => row.test.value.aliveWhenTaken ?? null,
    },
    counted("days_since_control", "Days since the last control of mites.", "daysSinceControl"),
    { name: "note", type: "string", says: "What else was written down.", of: (row) => row.test.value.note ?? null },
    { name: "by", type: "string", says: "Who wrote it down.", of: (row) => row.test.author },
    { name: "entry", type: "string", says: "Id of the entry in the journal.", of: (row) => row.test.entry },
  ],
  rows: (casebook) =>
    caseIds(casebook).flatMap((id) => {
      const codes = codesOf(casebook, id);
      return Object.values(casebook.cases[id]?.tests ?? {})
        .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.entry < b.entry ? -1 : 1))
        .map((test) => ({ codes, test }));
    }),
});
