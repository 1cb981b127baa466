/** `skepsis member`: who may come in, for whoever stands at the machine itself. */
import { isRole, ownsByRoot, roles } from "../../access/index.ts";
import type { Doing, ServerStore } from "../../storage/server.ts";
import { answered, blocked, type Problem, problem, type Result } from "../../units/index.ts";
import type { Given } from "./arguments.ts";
import { type Command, type ExitStatus, reportUnfit } from "./command.ts";
import { handHelp, programmeFlag, programmeOf, switchFlag, valueFlag, wordsOf } from "./hand-flags.ts";
import type { Io } from "./io.ts";
import { withStore } from "./records.ts";
import { table } from "./table.ts";

const flags = [
  valueFlag("name", "How the member is called and signs in."),
  valueFlag("role", "What the member may see and do.", { type: "string", enum: roles }),
  switchFlag("password-stdin", "The password is the first line of standard input; else one is drawn and shown once."),
  valueFlag("member", "Id of the member that is meant, as the list shows it."),
  valueFlag("device", "Id of the device that is meant, as the list shows it."),
  valueFlag("apiary", "Id of the apiary that is given or taken."),
  valueFlag("reason", "Why data are erased; it stays in the journal, so it names nobody."),
  valueFlag("address", "Where people reach the service, for the link of an invitation.", {
    type: "string",
    default: "http://localhost:4747",
  }),
  programmeFlag,
];

export const memberCommand: Command = {
  name: "member",
  summary: "Members of a programme: list, add, invite, change, and phones that were lost.",
  operand: "ACT",
  flags,
  help: () =>
    handHelp(
      "member ACT: who may come in.",
      flags,
      "list      members and devices\n" +
        "add       a member by --name and --role; the first administrator is made so\n" +
        "invite    prints a link that is used once, within seven days, by --role\n" +
        "role      gives --member another --role\n" +
        "password  gives --member another password and ends the sessions\n" +
        "          (one that is drawn runs out after seven days, and is exchanged at the first sign-in)\n" +
        "places    grants --member exact places; no-places revokes them\n" +
        "end       ends the membership of --member and every session\n" +
        "give      makes --apiary the own of --member; take takes it back\n" +
        "data      everything that is kept of --member, as one JSON value\n" +
        "erase     erases what is kept of --member, whose --name is typed beside it, with a --reason\n" +
        "lost      the --device is lost: its sessions end, what it sends later is kept apart\n" +
        "returned  the --device is back\n\n" +
        "Whoever may run this may read all records: it asks for no password. What is done stands in the\n" +
        "journal as done at the machine. As soon as a programme has a member, its service asks to sign in.\n",
    ),
  run,
};

type Told = Result<{ readonly value: unknown; readonly text: string }>;
type Work = (store: ServerStore, doing: Doing, given: Given, io: Io) => Promise<Told>;

const told = (value: unknown, text: string): Told => answered({ value, text });
const needed = (name: string, expected: string): Problem => problem("flag-empty", "blocked", `--${name}`, { expected });

/** The words of a flag, or that they are missing. */
function wanted(given: Given, name: string): Result<string> {
  const words = wordsOf(given, name);
  return words === null || words === "" ? blocked(needed(name, "a value")) : answered(words);
}

function wantedRole(given: Given): Result<string> {
  const role = wanted(given, "role");
  if (!role.ok || isRole(role.value)) return role;
  return blocked(
    problem("field-unfit", "blocked", "--role", { given: role.value, expected: `one of ${roles.join(", ")}` }),
  );
}

/** A change of one member, told in one line. */
const change =
  (
    to: (given: Given) => Result<{ readonly role?: string; readonly hasExactPlaces?: boolean; readonly ended?: true }>,
    says: string,
  ): Work =>
  async ({ members }, doing, given) => {
    const [member, what] = [wanted(given, "member"), to(given)];
    if (!member.ok) return member;
    if (!what.ok) return what;
    const changed = await members.change(member.value, what.value, doing);
    return changed.ok ? told(changed.value, `${changed.value.name}: ${says}\n`) : changed;
  };

const onDevice =
  (act: "loseDevice" | "returnDevice", says: string): Work =>
  async ({ members }, doing, given) => {
    const device = wanted(given, "device");
    if (!device.ok) return device;
    const done = await members[act](device.value, doing);
    return done.ok ? told(done.value, `${device.value}: ${says}\n`) : done;
  };

const onApiary =
  (act: "giveApiary" | "takeApiary", says: string): Work =>
  async ({ members }, doing, given) => {
    const [member, apiary] = [wanted(given, "member"), wanted(given, "apiary")];
    if (!member.ok) return member;
    if (!apiary.ok) return apiary;
    const done = await members[act](member.value, apiary.value, doing);
    return done.ok ? told({ member: member.value, apiary: apiary.value }, `${apiary.value}: ${says}\n`) : done;
  };

const acts: Readonly<Record<string, Work>> = {
  list,
  add,
  invite,
  password,
  data,
  erase,
  role: change((given) => {
    const role = wantedRole(given);
    return role.ok ? answered({ role: role.value }) : role;
  }, "has another role."),
  places: change(() => answered({ hasExactPlaces: true }), "may see exact places."),
  "no-places": change(() => answered({ hasExactPlaces: false }), "sees no exact places."),
  end: change(() => answered({ ended: true }), "is no member any more; every session has ended."),
  give: onApiary("giveApiary", "given, with its cases and their past."),
  take: onApiary("takeApiary", "taken back."),
  lost: onDevice("loseDevice", "lost; its sessions have ended, what it sends is kept apart."),
  returned: onDevice("returnDevice", "back; what it sends is taken in again."),
};

async function run(given: Given, io: Io): Promise<ExitStatus> {
  const programme = programmeOf(given);
  const [name, ...more] = given.positionals;
  const act = name === undefined || !Object.hasOwn(acts, name) ? undefined : acts[name];
  const unfit: Problem[] = typeof programme === "string" ? [] : [programme];
  if (act === undefined || more.length > 0) {
    const expected = `one of ${Object.keys(acts).join(", ")}`;
    unfit.push(problem("argument-unexpected", "blocked", null, { given: more[0] ?? name ?? "nothing", expected }));
  }
  if (typeof programme !== "string" || act === undefined || unfit.length > 0)
    return reportUnfit(unfit, "member", given.json, io);
  const doing = { by: null, at: io.now().toISOString() };
  const done = await withStore(programme, io, (store) => act(store, doing, given, io));
  if (!done.ok) return reportUnfit(done.problems, "member", given.json, io);
  io.out(given.json ? `${JSON.stringify(done.value.value)}\n` : done.value.text);
  return 0;
}

async function list({ members: book }: ServerStore): Promise<Told> {
  const [members, devices] = [await book.members(), await book.devices()];
  const since = (at: string) => at.slice(0, 10);
  const rows = members.map(({ id, name, role, hasExactPlaces, admittedAt, endedAt }) => [
    ...[name, role, hasExactPlaces ? "exact" : "", since(admittedAt), endedAt ? since(endedAt) : "", id],
  ]);
  const phones = devices.map(({ device, member, name, registeredAt, lostAt }) => [
    ...[
      name,
      members.find(({ id }) => id === member)?.name ?? member,
      since(registeredAt),
      lostAt ? since(lostAt) : "",
    ],
    device,
  ]);
  return told(
    { members, devices },
    members.length === 0
      ? "No member yet: the service answers on this machine alone.\n"
      : `${table(["name", "role", "places", "since", "until", "id"], rows)}${phones.length > 0 ? `\n${table(["device", "of", "since", "lost", "id"], phones)}` : ""}`,
  );
}

/** The password that was given, or one that is drawn: 20 letters and digits, about 100 bits. */
async function passwordFor(
  given: Given,
  io: Io,
  name: string,
): Promise<Result<{ readonly password: string; readonly drawn: boolean }>> {
  if (!given.flags.some(({ flag }) => flag.name === "password-stdin")) {
    const signs = "abcdefghijkmnpqrstuvwxyz23456789";
    const drawn = [...io.random(20)].map((byte) => signs[byte % signs.length]).join("");
    return answered({ password: drawn.replaceAll(/(.{5})(?=.)/g, "$1-"), drawn: true });
  }
  const [line = ""] = (await io.read("-")).split(/\r?\n/);
  const { newPasswordTrouble } = await import("../service/index.ts");
  const unfit = await newPasswordTrouble(line, name);
  return unfit ? blocked({ ...unfit, field: "standard input" }) : answered({ password: line, drawn: false });
}

const shownOnce = ({ password, drawn }: { readonly password: string; readonly drawn: boolean }): string =>
  drawn
    ? `Password, shown this once; good for seven days, and to be exchanged for another at the first sign-in: ${password}\n`
    : "";

async function add({ members }: ServerStore, doing: Doing, given: Given, io: Io): Promise<Told> {
  const [name, role] = [wanted(given, "name"), wantedRole(given)];
  if (!name.ok) return name;
  if (!role.ok) return role;
  const secret = await passwordFor(given, io, name.value);
  if (!secret.ok) return secret;
  const { hashed, drawnPasswordEndsAt } = await import("../service/index.ts");
  const ends = secret.value.drawn ? { passwordEndsAt: drawnPasswordEndsAt(doing.at) } : {};
  const password = await hashed(secret.value.password);
  const made = await members.admit({ name: name.value, role: role.value, password, ...ends }, doing);
  if (!made.ok) return made;
  const value = secret.value.drawn ? { ...made.value, password: secret.value.password } : made.value;
  return told(value, `${made.value.name} is a member now, as ${role.value}.\n${shownOnce(secret.value)}`);
}

async function password({ members }: ServerStore, doing: Doing, given: Given, io: Io): Promise<Told> {
  const id = wanted(given, "member");
  if (!id.ok) return id;
  const member = (await members.members()).find((each) => each.id === id.value && each.endedAt === null);
  if (!member) return blocked(problem("member-unknown", "blocked", "--member", { given: id.value }));
  const secret = await passwordFor(given, io, member.name);
  if (!secret.ok) return secret;
  const { hashed, drawnPasswordEndsAt } = await import("../service/index.ts");
  const ends = secret.value.drawn ? { endsAt: drawnPasswordEndsAt(doing.at) } : {};
  await members.setPassword({ member: member.id, password: await hashed(secret.value.password), ...ends }, doing);
  const value = secret.value.drawn ? { member: member.id, password: secret.value.password } : { member: member.id };
  return told(value, `${member.name} has another password; every session has ended.\n${shownOnce(secret.value)}`);
}

async function data({ members }: ServerStore, doing: Doing, given: Given): Promise<Told> {
  const id = wanted(given, "member");
  if (!id.ok) return id;
  const member = (await members.members()).find((each) => each.id === id.value);
  if (!member) return blocked(problem("member-unknown", "blocked", "--member", { given: id.value }));
  await members.note({ act: "data-exported", member: member.id }, doing);
  const value = {
    member,
    devices: (await members.devices()).filter((each) => each.member === member.id),
    sessions: await members.sessions(member.id, doing.at),
    entries: await members.entriesOf(member.id, isRole(member.role) && ownsByRoot(member.role)),
  };
  return told(value, `${JSON.stringify(value, null, 2)}\n`);
}

async function erase({ members }: ServerStore, doing: Doing, given: Given): Promise<Told> {
  const [id, name, reason] = [wanted(given, "member"), wanted(given, "name"), wanted(given, "reason")];
  if (!id.ok) return id;
  if (!name.ok) return name;
  if (!reason.ok) return reason;
  const member = (await members.members()).find((each) => each.id === id.value);
  // The name is typed beside the id, so that a slip erases nobody.
  if (member?.name !== name.value)
    return blocked(problem("field-unfit", "blocked", "--name", { given: name.value, expected: "the member’s name" }));
  const erased = await members.erase(member.id, reason.value, doing);
  return erased.ok ? told(erased.value, `Erased; entries without words now: ${erased.value.erased}.\n`) : erased;
}

async function invite({ members, programme }: ServerStore, doing: Doing, given: Given): Promise<Told> {
  const role = wantedRole(given);
  if (!role.ok) return role;
  const { newInvitation } = await import("../service/index.ts");
  const { secret, hash, endsAt } = newInvitation(programme, doing.at);
  const invitation = await members.invite({ role: role.value, hash, endsAt }, doing);
  const link = `${wordsOf(given, "address") ?? "http://localhost:4747"}/invitation#${secret}`;
  return told({ invitation, link }, `For one ${role.value}, used once, until ${endsAt.slice(0, 10)}:\n${link}\n`);
}
