/** `skepsis apart`: what is kept apart is listed and settled, for whoever stands at the machine itself. */
import { type Decision, type KeptApart, settlingDrafts } from "../../casebook/index.ts";
import { type EntryDraft, newEntryId, newSalt, sealChain } from "../../journal/index.ts";
import { toolDevice } from "../../storage/index.ts";
import type { ServerStore } from "../../storage/server.ts";
import { answered, blocked, problem, type Result } from "../../units/index.ts";
import { apartView, isWaiting, shortHash } from "../model/index.ts";
import { apartWords } from "../words/index.ts";
import type { Given } from "./arguments.ts";
import { type Command, type ExitStatus, reportUnfit } from "./command.ts";
import { handHelp, programmeFlag, programmeOf, valueFlag, wordsOf } from "./hand-flags.ts";
import type { Io } from "./io.ts";
import { printable } from "./printable.ts";
import { withRecords } from "./records.ts";

const flags = [
  valueFlag("entry", "First digits of the hash of the entry that is meant, as the list shows them."),
  valueFlag("reason", "Why; it stays in the journal with the decision."),
  valueFlag("author", "Who decides; else the name of the account."),
  programmeFlag,
];

export const apartCommand: Command = {
  name: "apart",
  summary: "List what is kept apart of restored, copied or lost phones, and settle it.",
  operand: "ACT",
  flags,
  help: () =>
    handHelp(
      "apart ACT: what is kept apart, for a person to judge.",
      flags,
      "list       each entry kept apart beside the one that stands under its number\n" +
        "take-in    writes a new entry that says what --entry says, and the decision with its --reason\n" +
        "leave-out  writes the decision alone; nothing is ever deleted\n\n" +
        "An entry that is settled is no fault to verify. Where people decided differently, the newest\n" +
        "decision takes the place of those before it. To settle the same twice writes nothing.\n",
    ),
  run,
};

const decisions: Readonly<Record<string, Decision>> = { "take-in": "taken-in", "leave-out": "left-out" };

type Told = Result<{ readonly value: unknown; readonly text: string }>;

async function run(given: Given, io: Io): Promise<ExitStatus> {
  const programme = programmeOf(given);
  const [act = "nothing", ...more] = given.positionals;
  if (typeof programme !== "string") return reportUnfit([programme], "apart", given.json, io);
  if (more.length > 0 || !(act === "list" || Object.hasOwn(decisions, act))) {
    const expected = `one of list, ${Object.keys(decisions).join(", ")}`;
    const unfit = problem("argument-unexpected", "blocked", null, { given: more[0] ?? act, expected });
    return reportUnfit([unfit], "apart", given.json, io);
  }
  const decision = decisions[act];
  const done = await withRecords(programme, io, (store) =>
    decision === undefined ? list(store) : settle(store, decision, given, io),
  );
  const told = done.ok ? done.value : done;
  if (!told.ok) return reportUnfit(told.problems, "apart", given.json, io);
  io.out(given.json ? `${JSON.stringify(told.value.value)}\n` : told.value.text);
  return 0;
}

async function list(store: ServerStore): Promise<Told> {
  const [apart, casebook] = [await store.apart(), await store.states()];
  const waiting = apart.filter(isWaiting).length;
  const title = apartWords.title({ waiting, settled: apart.length - waiting }).replaceAll("**", "");
  const parts = apart.map((kept) => {
    const { head, kept: own, standing } = apartView(casebook, kept, apartWords);
    const sides = [own, ...(standing ? [standing] : [])].flatMap(({ title: name, what, author, recordedAt, says }) => [
      `  ${name}: ${what}, ${apartWords.by({ author, when: recordedAt })}`,
      ...says.map(({ name: field, value }) => `    ${field}: ${value}`),
    ]);
    const settled = kept.settlements.map(
      ({ value, author, recordedAt }) =>
        `  ${apartWords.says({ decision: value.decision, author, when: recordedAt.slice(0, 10) }).replaceAll("**", "")} ${value.reason}`,
    );
    return [
      `${shortHash(kept.hash)}  ${head}`,
      ...sides,
      ...(standing ? [] : [`  ${apartWords.noneStands}`]),
      ...settled,
    ];
  });
  return answered({
    value: { apart },
    text: `${[title, ...parts.flatMap((lines) => ["", ...lines.map(printable)])].join("\n")}\n`,
  });
}

async function settle(store: ServerStore, decision: Decision, given: Given, io: Io): Promise<Told> {
  const hash = (wordsOf(given, "entry") ?? "").toLowerCase();
  const found = (await store.apart()).filter((kept) => hash.length >= 8 && kept.hash.startsWith(hash));
  const [kept] = found;
  if (kept === undefined || found.length > 1)
    return blocked(
      problem("apart-unknown", "blocked", "--entry", { given: hash, slots: { hash: hash || "no digits" } }),
    );
  const reason = wordsOf(given, "reason") ?? "";
  const on = io.now().toISOString().slice(0, 10);
  const drafts = settlingDrafts(kept, { decision, reason, programme: store.programme, on });
  if (!drafts.ok) return drafts;
  const { refused } = await store.push(sealed(drafts.value, { store, given, io }));
  // The entries are our own and in a chain of their own: a refusal is our bug.
  if (refused.length > 0) throw new Error(`the store refused what settles: ${JSON.stringify(refused[0])}`);
  return answered({
    value: { hash: kept.hash, decision, written: drafts.value.length },
    text: lineOf(kept, decision, drafts.value),
  });
}

function lineOf({ entry: { header }, hash }: KeptApart, decision: Decision, { length }: readonly EntryDraft[]): string {
  const what = `${shortHash(hash)}, entry ${header.seq} of ${printable(header.device)}:`;
  const says = decision === "taken-in" ? "taken in" : "left out";
  return length === 0 ? `${what} ${says} already; nothing was written.\n` : `${what} ${says}.\n`;
}

/** Each settling writes a chain of its own, so that it can meet no other writer's number. */
function sealed(
  drafts: readonly EntryDraft[],
  { store, given, io }: { readonly store: ServerStore; readonly given: Given; readonly io: Io },
) {
  const now = io.now();
  const author = wordsOf(given, "author") ?? io.env.USER ?? io.env.USERNAME ?? "unknown";
  const chances = drafts.map(() => ({ id: newEntryId(now.getTime(), io.random(16)), salt: newSalt(io.random(16)) }));
  const device = toolDevice("settling", newEntryId(now.getTime(), io.random(16)));
  const end = { device, programme: store.programme, author, recordedAt: now.toISOString(), head: null };
  return sealChain(drafts, end, chances);
}
