/** `skepsis verify`: is everything there that was written down, and as it was written? */
import { decodeJournal, type Head, type VerifyReport, verifyChain } from "../../journal/index.ts";
import type { StoreReport } from "../../storage/server.ts";
import { answered, blocked, type Problem, problem, type Result } from "../../units/index.ts";
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
        "Exit status 1 when anything is missing, changed or kept apart and not settled, or a table of who\n" +
        "may see what says something else than the journal. What a lost device sent, what was settled, and\n" +
        "bodies that were erased or withheld are named and no fault. Against a person who holds all the\n" +
        "records only heads noted elsewhere help.\n",
    ),
  run,
};

async function run(given: Given, io: Io): Promise<ExitStatus> {
  const noted = await notedHeads(given, io);
  const report = noted.ok ? await checked(given, io, noted.value) : noted;
  if (!report.ok) return reportUnfit(report.problems, "verify", given.json, io);
  io.out(given.json ? `${JSON.stringify(report.value)}\n` : forPeople(report.value));
  return report.value.isIntact ? 0 : 1;
}

async function checked(given: Given, io: Io, noted: readonly Head[]): Promise<Result<StoreReport>> {
  const [file, ...more] = given.positionals;
  if (more.length > 0)
    return blocked(problem("argument-unexpected", "blocked", null, { given: more[0], expected: "one file" }));
  if (file !== undefined) {
    const text = await readText(file, "FILE", io);
    if (!text.ok) return text;
    const decoded = decodeJournal(text.value);
    return decoded.ok
      ? answered({
          ...verifyChain(decoded.value, noted),
          keptApart: 0,
          fromLost: 0,
          settledApart: [],
          files: null,
          rights: null,
          damage: [],
        })
      : decoded;
  }
  const programme = programmeOf(given);
  return typeof programme === "string" ? withRecords(programme, io, (store) => store.check(noted)) : blocked(programme);
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

const counted = (count: number): string => `${count} ${count === 1 ? "file" : "files"}`;

/** Photos and voice notes: here, not sent yet, erased. */
function filesForPeople(files: StoreReport["files"]): readonly string[] {
  if (files === null || files.whole + files.waiting.length + files.erased === 0) return [];
  return [
    `${counted(files.whole)} that entries name, here and unchanged.`,
    ...files.waiting.map((each) => `${counted(each.files)} not uploaded yet from device ${each.device}.`),
    ...(files.erased > 0 ? [`${counted(files.erased)} erased with their entries. That is no fault.`] : []),
  ];
}

/** Who may see what, as far as it could be refolded from the journal. */
function rightsForPeople(rights: StoreReport["rights"]): readonly string[] {
  if (rights === null || rights.acts + rights.unknownActs === 0) return [];
  const acts = `${rights.acts} ${rights.acts === 1 ? "act" : "acts"} of the service`;
  if (rights.unknownActs === 0) return [`Who may see what was refolded from ${acts}.`];
  return [
    `Who may see what was refolded from ${acts}; ${rights.unknownActs} more cannot be read, erased or of a newer version.`,
    ...(rights.unproven.length > 0 ? ["They may account for this, which is not checkable and told as no fault:"] : []),
    ...rights.unproven.map((each) => `- ${each}`),
  ];
}

function forPeople(report: StoreReport): string {
  const {
    isIntact,
    checked: entries,
    faults,
    missingBodies,
    heads,
    keptApart,
    fromLost,
    settledApart,
    files,
    rights,
    damage,
  } = report;
  const erased = missingBodies.filter(({ why }) => why === "erased").length;
  const lines = [
    isIntact
      ? `${entries} entries, all there and unchanged.`
      : `${entries} entries, and something is missing, changed or kept apart.`,
    ...(missingBodies.length > 0
      ? [`Without body: ${erased} erased, ${missingBodies.length - erased} withheld. That is no fault.`]
      : []),
    ...erasures(missingBodies),
    ...(keptApart > 0
      ? [
          `Kept apart: ${keptApart} that claim a number which another entry has; a device was restored or copied.`,
          "skepsis apart list shows each beside what stands; take-in or leave-out settles it, as does Records on the page.",
        ]
      : []),
    ...(fromLost > 0
      ? [
          `Kept apart: ${fromLost} that came from a device reported lost. That is no fault; they are taken in once it is found, or settled by skepsis apart.`,
        ]
      : []),
    ...settledApart.map(({ by, entries: count }) => `Kept apart: ${count}, settled by ${by}. That is no fault.`),
    ...filesForPeople(files),
    ...rightsForPeople(rights),
    ...(damage.length > 0 ? ["Damaged beside the chains:", ...damage.map((each) => `- ${each}`)] : []),
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
