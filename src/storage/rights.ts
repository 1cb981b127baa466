/** Who may come in and see what, refolded from the journal: from the service's own acts, and from what hangs on what. */
import { type BodyOf, type Entry, kinds } from "../journal/index.ts";
import { atTheMachine, isToolDevice, serviceDevice } from "./own-devices.ts";
import { type RootsRefold, type RootTold, rootsRefold } from "./rights-roots.ts";

/** What the row of a member should say. */
export interface MemberTold {
  readonly role: string;
  readonly places: number;
  readonly admitted_at: string;
  readonly ended_at: string | null;
  readonly isErased: boolean;
  readonly since: Since<"role" | "places" | "ended_at">;
}

/** What the row of a device should say. */
export interface DeviceTold {
  readonly member: string;
  readonly registered_at: string;
  readonly lost_at: string | null;
  readonly since: Since<"lost_at">;
}

/** Positions from which on columns say what they say. */
type Since<Column extends string> = Readonly<Record<Column, number>>;

/** Passkeys of a member: the instants at which one was added, how many should be there, and since when. */
export interface KeysTold {
  readonly addedAt: ReadonlySet<string>;
  readonly count: number;
  readonly since: number;
}

/** What the tables should say by what was taken in so far. */
export interface RightsTold extends Pick<RootsRefold, "scopes" | "parents"> {
  readonly members: ReadonlyMap<string, MemberTold>;
  readonly devices: ReadonlyMap<string, DeviceTold>;
  readonly keys: ReadonlyMap<string, KeysTold>;
  /** Whether the device that began the root is nobody's. */
  readonly isBegunByNobody: (root: string) => boolean;
  /** Who signed in when, and who invited to which role when; made by `actKey`. */
  readonly signIns: ReadonlySet<string>;
  readonly invitations: ReadonlySet<string>;
  /** Acts that were read. */
  readonly acts: number;
  /** Acts that cannot be read: their body was erased, or a newer version wrote them. */
  readonly unknownActs: readonly UnknownAct[];
}

/** What the header of an act still says: when and by whom, and no longer what. */
export interface UnknownAct {
  readonly position: number;
  readonly at: string;
  /** The member who did it, or the machine. */
  readonly by: string;
  /** Whether it may have changed another: by the journal it was done by an administrator, or at the machine. */
  readonly mayAdminister: boolean;
}

export interface RightsRefold {
  /** Takes an entry in; in the order of positions. */
  readonly take: (entry: Entry, position: number) => void;
  readonly told: () => RightsTold;
}

const administrator = "administrator";

type Act = BodyOf<"access-noted">;
/** An act with all that one may name, empty where it names none. */
interface Noted {
  readonly by: string | null;
  readonly member: string;
  readonly role: string;
  readonly device: string;
  readonly apiary: string;
  readonly at: string;
  readonly position: number;
}

/** Under which an act is looked up that a row must come from. */
export const actKey = (...parts: readonly (string | null)[]): string => JSON.stringify(parts);

export function rightsRefold(programme: string): RightsRefold {
  const members = new Map<string, MemberTold>();
  const devices = new Map<string, DeviceTold>();
  const keys = new Map<string, { readonly addedAt: Set<string>; readonly count: number; readonly since: number }>();
  const [signIns, invitations] = [new Set<string>(), new Set<string>()];
  const roots = rootsRefold(programme);
  let acts = 0;
  const unknownActs: UnknownAct[] = [];
  const waiting: RootTold[] = [];
  let isNoting = false;

  const ownerOf = (device: string) => devices.get(device)?.member;
  const settle = () => {
    for (const told of waiting) roots.take(told, ownerOf(told.device));
    waiting.length = 0;
  };
  const changeMember = (id: string, to: Partial<MemberTold>, position: number) => {
    const member = members.get(id);
    if (!member) return;
    const changed = Object.fromEntries(Object.keys(to).map((column) => [column, position]));
    members.set(id, { ...member, ...to, since: { ...member.since, ...changed } });
  };
  const changeDevice = (device: string, lost_at: string | null, position: number) => {
    const row = devices.get(device);
    if (row) devices.set(device, { ...row, lost_at, since: { lost_at: position } });
  };
  /** An older version did not write down whose a passkey is: it is of who added it. */
  const changeKeys = (change: 1 | -1, { member: named, by, at, position }: Noted) => {
    const member = named === "" ? (by ?? "") : named;
    const { addedAt, count, since } = keys.get(member) ?? { addedAt: new Set<string>(), count: 0, since: position };
    if (change === 1) addedAt.add(at);
    keys.set(member, { addedAt, count: count + change, since });
  };
  /** Nobody came along with the entries: what is everyone's, and what hangs on what, is all that is left. */
  const beginAnew = () => {
    for (const each of [members, devices, keys, signIns, invitations]) each.clear();
    unknownActs.length = 0;
    roots.leaveToEveryone();
  };
  /** By the journal, or where an act that cannot be read either may since have made its doer an administrator. */
  const mayAdminister = (by: string): boolean => {
    const member = members.get(by);
    if (by === atTheMachine || member === undefined || member.role === administrator) return true;
    return unknownActs.some((each) => each.mayAdminister && each.position > member.since.role);
  };

  /** What an act changes; acts that change nothing that is refolded are not among them. */
  const changes: Partial<Record<Act["act"], (noted: Noted) => void>> = {
    "member-admitted": ({ member, role, at, position }) => {
      const since = { role: position, places: position, ended_at: position };
      members.set(member, { role, places: 0, admitted_at: at, ended_at: null, isErased: false, since });
    },
    "member-ended": ({ member, at, position }) => changeMember(member, { ended_at: at }, position),
    "role-given": ({ member, role, position }) => changeMember(member, { role }, position),
    "places-granted": ({ member, position }) => changeMember(member, { places: 1 }, position),
    "places-revoked": ({ member, position }) => changeMember(member, { places: 0 }, position),
    "data-erased": ({ member, at, position }) => {
      keys.set(member, { addedAt: new Set(), count: 0, since: position });
      changeMember(member, { ended_at: at, isErased: true }, position);
    },
    "apiary-given": ({ member, apiary, position }) => roots.give(member, apiary, position),
    "apiary-taken": ({ member, apiary }) => roots.takeBack(member, apiary, ownerOf),
    "device-registered": ({ device, by, at, position }) =>
      void devices.set(device, { member: by ?? "", registered_at: at, lost_at: null, since: { lost_at: position } }),
    "device-lost": ({ device, at, position }) => changeDevice(device, at, position),
    "device-returned": ({ device, position }) => changeDevice(device, null, position),
    "passkey-added": (noted) => changeKeys(1, noted),
    "passkey-removed": (noted) => changeKeys(-1, noted),
    "signed-in": ({ by, at }) => void signIns.add(actKey(by, at)),
    invited: ({ by, role, at }) => void invitations.add(actKey(by, role, at)),
    "accounts-left-behind": beginAnew,
  };

  return {
    take(entry, position) {
      const told = roots.tellingOf(entry, position);
      const { kind, at, device: writer, author } = entry.header;
      const isAct = entry.header.device === serviceDevice && kind === "access-noted";
      const act = isAct ? actOf(entry) : null;
      // A device that is new is noted after the entries by whose push it became somebody's: those wait for it.
      if (act?.act !== "device-registered" && (isAct || isNoting)) settle();
      if (told) waiting.push(told);
      if (isToolDevice(writer)) settle(); // nobody's, and no push of a member
      isNoting = isAct;
      if (!isAct) return;
      if (act === null) unknownActs.push({ position, at, by: author, mayAdminister: mayAdminister(author) });
      else {
        acts += 1;
        const { by, member = "", role = "", device = "", apiary = "" } = act;
        changes[act.act]?.({ by, member, role, device, apiary, at, position });
      }
    },
    told() {
      settle();
      const { scopes, parents } = roots;
      const isBegunByNobody = (root: string) => ownerOf(roots.beginnerOf(root) ?? "") === undefined;
      return {
        ...{ members, devices, keys, signIns, invitations, scopes, parents, isBegunByNobody },
        acts,
        unknownActs,
      };
    },
  };
}

/** The act of a note of the service; null when it cannot be known. */
function actOf({ body }: Entry): Act | null {
  const read = kinds["access-noted"].body.safeParse(body?.data);
  return read.success ? read.data : null;
}
