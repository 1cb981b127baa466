/** `skepsis import`: a table somebody else made becomes entries, whole or not at all, and never twice. */
import { emptyCasebook } from "../../casebook/index.ts";
import { type Entry, type EntryDraft, newEntryId, newSalt, sealChain } from "../../journal/index.ts";
import { type Notice, noticeOf } from "../../reasoning/index.ts";
import { toolDevice } from "../../storage/index.ts";
import {
  dryRun,
  type FreshDrafts,
  freshDrafts,
  mostMegabytes,
  type NewNames,
  newNames,
  type PlannedImport,
  readMapping,
} from "../../transfer/index.ts";
import { answered, blocked, type Problem, problem, type Result } from "../../units/index.ts";
import { problemSentence, tableWords } from "../words/index.ts";
import type { Given } from "./arguments.ts";
import { type Command, type ExitStatus, reportUnfit } from "./command.ts";
import { handHelp, programmeFlag, programmeOf, switchFlag, valueFlag, wordsOf } from "./hand-flags.ts";
import type { Io } from "./io.ts";
import { withRecords, withStore } from "./records.ts";
import { withNotices } from "./table.ts";
import { readText } from "./verify-command.ts";

const flags = [
  valueFlag("mapping", "JSON file that says how each column becomes entries. Needed."),
  switchFlag("dry-run", "Say what would be added and write nothing."),
  valueFlag("author", "Who answers for the import; else the name of the account."),
  programmeFlag,
];

export const importCommand: Command = {
  name: "import",
  summary: "Take over a table (CSV, XLSX, JSON), whole or not at all.",
  operand: "FILE",
  flags,
  help: () =>
    handHelp(
      "import FILE --mapping MAPPING: take over a table (CSV, XLSX, JSON), whole or not at all.",
      flags,
      "One cell that does not fit and nothing is written; every such cell is named by line and column.\n" +
        "What stands already is not added again; what stands differently is shown and never overwritten.\n",
    ),
  run,
};

interface Planned {
  readonly planned: PlannedImport;
  readonly problems: readonly Problem[];
}

async function run(given: Given, io: Io): Promise<ExitStatus> {
  const programme = programmeOf(given);
  if (typeof programme !== "string") return reportUnfit([programme], "import", given.json, io);
  const plan = await planOf(given, io);
  if (!plan.ok) return reportUnfit(plan.problems, "import", given.json, io);
  const isDry = wordsOf(given, "dry-run") !== null;
  const { drafts, counts } = plan.value.planned;
  const found = isDry ? await lookedAt(programme, io, drafts) : await takenOver(programme, drafts, { given, io });
  const differing = found.differing.map(({ draft }) => standsDifferently(draft));
  const notices = [...plan.value.problems, ...differing].map((each) => noticeOf(each, problemSentence));
  const answer = {
    dryRun: isDry,
    ...counts,
    added: found.fresh.length,
    standing: found.standing,
    differing: found.differing.length,
    new: newNames(found.fresh),
    ...(notices.length > 0 ? { notices } : {}),
  };
  io.out(
    given.json ? `${JSON.stringify(answer)}\n` : withNotices(forPeople(answer), { notices: notices.map(withPlace) }),
  );
  return 0;
}

async function planOf(given: Given, io: Io): Promise<Result<Planned>> {
  const [file, ...more] = given.positionals;
  const mappingFile = wordsOf(given, "mapping");
  const missing: Problem[] = [
    ...(file === undefined
      ? [problem("field-missing", "blocked", "FILE", { expected: "a table as CSV, XLSX or JSON" })]
      : []),
    ...(more.length > 0
      ? [problem("argument-unexpected", "blocked", null, { given: more[0], expected: "one file" })]
      : []),
    ...(mappingFile === null ? [problem("flag-empty", "blocked", "--mapping", { expected: "a mapping file" })] : []),
  ];
  if (missing.length > 0 || file === undefined || mappingFile === null) return blocked(...missing);
  const [table, mappingText] = [await readTable(file, io), await readText(mappingFile, "--mapping", io)];
  if (!table.ok || !mappingText.ok)
    return blocked(...[table, mappingText].flatMap((each) => (each.ok ? [] : each.problems)));
  const mapping = mappingFrom(mappingText.value, mappingFile);
  if (!mapping.ok) return mapping;
  const planned = dryRun({ given: table.value, mapping: mapping.value, today: io.now().toISOString().slice(0, 10) });
  if (!planned.ok) return blocked(...planned.problems);
  return { ok: true, value: { planned: planned.value, problems: planned.problems }, problems: [] };
}

async function readTable(file: string, io: Io): Promise<Result<Uint8Array>> {
  try {
    return answered(await io.readBytes(file, mostMegabytes * 1024 * 1024));
  } catch {
    const expected = "a file that can be read, or -";
    return blocked(problem("input-unreadable", "blocked", "FILE", { given: file, expected }));
  }
}

function mappingFrom(text: string, file: string): ReturnType<typeof readMapping> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    const expected = `JSON; ${error instanceof Error ? error.message : String(error)}`;
    return blocked(problem("input-not-json", "blocked", "--mapping", { given: file, expected }));
  }
  return readMapping(json);
}

async function lookedAt(programme: string, io: Io, drafts: readonly EntryDraft[]): Promise<FreshDrafts> {
  const found = await withRecords(programme, io, async (store) => freshDrafts(await store.states(), drafts));
  return found.ok ? found.value : freshDrafts(emptyCasebook, drafts);
}

const takenOver = (
  programme: string,
  drafts: readonly EntryDraft[],
  by: { readonly given: Given; readonly io: Io },
): Promise<FreshDrafts> =>
  withStore(programme, by.io, async (store) => {
    const found = freshDrafts(await store.states(), drafts);
    if (found.fresh.length === 0) return found;
    const { refused } = await store.push(sealed(found.fresh, programme, by));
    // The entries are our own and in a chain of their own: a refusal is our bug.
    if (refused.length > 0)
      throw new Error(`the store refused ${refused.length} entries: ${JSON.stringify(refused[0])}`);
    return found;
  });

/** Each import writes a chain of its own, so that it can meet no other writer's number. */
function sealed(
  drafts: readonly EntryDraft[],
  programme: string,
  { given, io }: { readonly given: Given; readonly io: Io },
): readonly Entry[] {
  const now = io.now();
  const author = wordsOf(given, "author") ?? io.env.USER ?? io.env.USERNAME ?? "unknown";
  const chances = drafts.map(() => ({ id: newEntryId(now.getTime(), io.random(16)), salt: newSalt(io.random(16)) }));
  const device = toolDevice("import", newEntryId(now.getTime(), io.random(16)));
  return sealChain(drafts, { device, programme, author, recordedAt: now.toISOString(), head: null }, chances);
}

const standsDifferently = ({ kind, about }: EntryDraft): Problem =>
  problem("stands-differently", "warned", null, { slots: { what: `${kind} ${about.join(" ")}` } });

/** For people the line and the column stand before what is to be borne in mind there. */
const withPlace = (notice: Notice): Pick<Notice, "message"> => ({
  message: notice.field === null ? notice.message : `${notice.field}: ${notice.message}`,
});

function forPeople(answer: {
  readonly dryRun: boolean;
  readonly rows: number;
  readonly added: number;
  readonly standing: number;
  readonly differing: number;
  readonly new: NewNames;
}): string {
  const { dryRun: isDry, rows, added, standing, differing, new: names } = answer;
  return [
    `${rows} rows. ${added} entries ${isDry ? "would be added" : "added"}; ${standing} stand already.\n`,
    isDry && names.apiaries.length + names.colonies.length > 0 ? `${tableWords.newHere(names)}\n` : "",
    differing > 0 ? `${differing} stand differently: nothing was overwritten.\n` : "",
    isDry ? "Nothing was written.\n" : "",
  ].join("");
}
