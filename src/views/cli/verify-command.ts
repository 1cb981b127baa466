/** `skepsis verify`: is everything there that was written down, and as it was written? */
import { decodeJournal, type Entry, type Head, type VerifyReport, verifyChain } from "../../journal/index.ts";
import { type Problem, problem, type Result } from "../../units/index.ts";
import type { Given } from "./arguments.ts";
import { type Command, type ExitStatus, reportUnfit } from "./command.ts";
import { handHelp, programmeFlag, programmeOf, valueFlag, wordsOf } from "./hand-flags.ts";
import type { Io } from "./io.ts";
import { withRecords } from "./records.ts";
import { table } from "./table.ts";

const flags = [
  programmeFlag,
  valueFlag(
    "heads",
    "File with heads noted elsewhere, a JSON list of device, seq and hash: only they show that the end of a chain was cut off.",
  ),
];

export const verifyCommand: Command = {
  name: "verify",
  summary: "Check that the records are whole and unchanged.",
  operand: "FILE",
  flags,
  help: () =>
    handHelp(
      "verify [FILE]: check that the records are whole and unchanged.",
      flags,
      "Without FILE the records of the service; with FILE a journal that export wrote.\n" +
        "Exit status 1 when anything is missing or changed. Bodies that were erased or withheld are named\n" +
        "and no fault. Against a person who holds all the records only heads noted elsewhere help.\n",
    ),
  run,
};

interface Looked {
  readonly entries: readonly Entry[];
  /** Heads that the store noted beside its entries: they show when its newest entries are gone. */
  readonly heads: readonly Head[];
  /** Entries that claim a number which another entry has, kept apart by the store. */
  readonly apart: number;
}

async function run(given: Given, io: Io): Promise<ExitStatus> {
  const [noted, looked] = [await notedHeads(given, io), await look(given, io)];
  const problems = [noted, looked].flatMap((each) => (each.ok ? [] : each.problems));
  if (!noted.ok || !looked.ok) return reportUnfit(problems, "verify", given.json, io);
  const report = verifyChain(looked.value.entries, [...looked.value.heads, ...noted.value]);
  const isIntact = report.isIntact && looked.value.apart === 0;
  const answer = { ...report, isIntact, keptApart: looked.value.apart };
  io.out(given.json ? `${JSON.stringify(answer)}\n` : forPeople(answer));
  return isIntact ? 0 : 1;
}

async function look(given: Given, io: Io): Promise<Result<Looked>> {
  const [file, ...more] = given.positionals;
  if (more.length > 0)
    return {
      ok: false,
      problems: [problem("argument-unexpected", "blocked", null, { given: more[0], expected: "one file" })],
    };
  if (file !== undefined) {
    const text = await readText(file, "FILE", io);
    if (!text.ok) return text;
    const decoded = decodeJournal(text.value);
    return decoded.ok ? { ...decoded, value: { entries: decoded.value, heads: [], apart: 0 } } : decoded;
  }
  const programme = programmeOf(given);
  if (typeof programme !== "string") return { ok: false, problems: [programme] };
  return withRecords(programme, io, async (store) => ({
    heads: await store.heads(), // first, so that what comes in meanwhile is not missed
    entries: await store.all(),
    apart: (await store.quarantined()).length,
  }));
}

async function notedHeads(given: Given, io: Io): Promise<Result<readonly Head[]>> {
  const file = wordsOf(given, "heads");
  if (file === null) return { ok: true, value: [], problems: [] };
  const text = await readText(file, "--heads", io);
  if (!text.ok) return text;
  const heads = parse(text.value);
  if (Array.isArray(heads) && heads.every(isHead)) return { ok: true, value: heads, problems: [] };
  const unfit = problem("field-unfit", "blocked", "--heads", {
    given: file,
    expected: "a JSON list of { device, seq, hash }",
  });
  return { ok: false, problems: [unfit] };
}

const isHead = (value: unknown): value is Head => {
  const { device, seq, hash } = (value ?? {}) as Partial<Head>;
  return typeof device === "string" && Number.isInteger(seq) && typeof hash === "string";
};

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** A file as text, or the problem that it cannot be read. */
export async function readText(file: string, field: string, io: Io): Promise<Result<string>> {
  try {
    return { ok: true, value: await io.read(file), problems: [] };
  } catch {
    const unreadable: Problem = problem("input-unreadable", "blocked", field, {
      given: file,
      expected: "a file that can be read, or -",
    });
    return { ok: false, problems: [unreadable] };
  }
}

/** Who erased how many bodies, and when. */
function erasures(missing: VerifyReport["missingBodies"]): readonly string[] {
  const told = missing.flatMap(({ erased }) => (erased ? [`erased by ${erased.by} on ${erased.at.slice(0, 10)}`] : []));
  return [...Map.groupBy(told, (each) => each)].map(([each, all]) => `  ${all.length} ${each}`);
}

function forPeople(report: VerifyReport & { readonly keptApart: number }): string {
  const { isIntact, checked, faults, missingBodies, heads, keptApart } = report;
  const erased = missingBodies.filter(({ why }) => why === "erased").length;
  const lines = [
    isIntact
      ? `${checked} entries, all there and unchanged.`
      : `${checked} entries, and something is missing or changed.`,
    ...(missingBodies.length > 0
      ? [`Without body: ${erased} erased, ${missingBodies.length - erased} withheld. That is no fault.`]
      : []),
    ...erasures(missingBodies),
    ...(keptApart > 0
      ? [`Kept apart: ${keptApart} that claim a number which another entry has; a device was restored or copied.`]
      : []),
  ];
  const found = faults.map(({ device, seq, reason, entries }) => [device, seq, reason, entries.join(", ")]);
  return [
    `${lines.join("\n")}\n`,
    ...(found.length > 0 ? [table(["device", "number", "fault", "entries"], found)] : []),
    ...(heads.length > 0
      ? [
          table(
            ["device", "newest number", "hash"],
            heads.map(({ device, seq, hash }) => [device, seq, hash]),
          ),
        ]
      : []),
  ].join("\n");
}
