/** Who may come in and see what, refolded from the journal: from the service's own acts, and from what hangs on what. */
import { type BodyOf, type Entry, kinds } from "../journal/index.ts";
import { serviceDevice } from "./member-notes.ts";
import { type RootsRefold, type RootTold, rootsRefold } from "./rights-roots.ts";

/** What the row of a member should say. */
export interface MemberTold {
  readonly role: string;
  readonly places: number;
  readonly admitted_at: string;
  readonly ended_at: string | null;
  readonly isErased: boolean;
}

/** What the row of a device should say. */
export interface DeviceTold {
  readonly member: string;
  readonly registered_at: string;
  readonly lost_at: string | null;
}

/** Passkeys of a member: the instants at which one was added, and how many should be there. */
export interface KeysTold {
  readonly addedAt: ReadonlySet<string>;
  readonly count: number;
}

/** What the tables should say by what was taken in so far. */
export interface RightsTold extends Pick<RootsRefold, "scopes" | "parents"> {
  readonly members: ReadonlyMap<string, MemberTold>;
  readonly devices: ReadonlyMap<string, DeviceTold>;
  readonly keys: ReadonlyMap<string, KeysTold>;
  /** Who signed in when, and who invited to which role when; made by `actKey`. */
  readonly signIns: ReadonlySet<string>;
  readonly invitations: ReadonlySet<string>;
  /** Acts that were read. */
  readonly acts: number;
  /** Acts that cannot be read: their body was erased, or a newer version wrote them. */
  readonly unknownActs: number;
}

export interface RightsRefold {
  /** Takes an entry in; in the order of positions. */
  readonly take: (entry: Entry, position: number) => void;
  readonly told: () => RightsTold;
}

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
  const keys = new Map<string, { readonly addedAt: Set<string>; readonly count: number }>();
  const [signIns, invitations] = [new Set<string>(), new Set<string>()];
  const roots = rootsRefold(programme);
  let [acts, unknownActs] = [0, 0];
  const waiting: RootTold[] = [];
  let isNoting = false;

  const ownerOf = (device: string) => devices.get(device)?.member;
  const settle = () => {
    for (const told of waiting) roots.take(told, ownerOf(told.device));
    waiting.length = 0;
  };
  const changeMember = (id: string, to: Partial<MemberTold>) => {
    const member = members.get(id);
    if (member) members.set(id, { ...member, ...to });
  };
  const changeDevice = (device: string, lost_at: string | null) => {
    const row = devices.get(device);
    if (row) devices.set(device, { ...row, lost_at });
  };
  /** Null: an older version did not write down whose the passkey was, unless by who added it. */
  const changeKeys = (member: string | null, by: 1 | -1, at: string) => {
    if (member === null) {
      unknownActs += 1;
      return;
    }
    const { addedAt, count } = keys.get(member) ?? { addedAt: new Set<string>(), count: 0 };
    if (by === 1) addedAt.add(at);
    keys.set(member, { addedAt, count: count + by });
  };

  /** What an act changes; acts that change nothing that is refolded are not among them. */
  const changes: Partial<Record<Act["act"], (noted: Noted) => void>> = {
    "member-admitted": ({ member, role, at }) =>
      void members.set(member, { role, places: 0, admitted_at: at, ended_at: null, isErased: false }),
    "member-ended": ({ member, at }) => changeMember(member, { ended_at: at }),
    "role-given": ({ member, role }) => changeMember(member, { role }),
    "places-granted": ({ member }) => changeMember(member, { places: 1 }),
    "places-revoked": ({ member }) => changeMember(member, { places: 0 }),
    "data-erased": ({ member, at }) => {
      keys.delete(member);
      changeMember(member, { ended_at: at, isErased: true });
    },
    "apiary-given": ({ member, apiary, position }) => roots.give(member, apiary, position),
    "apiary-taken": ({ member, apiary }) => roots.takeBack(member, apiary, ownerOf),
    "device-registered": ({ device, by, at }) =>
      void devices.set(device, { member: by ?? "", registered_at: at, lost_at: null }),
    "device-lost": ({ device, at }) => changeDevice(device, at),
    "device-returned": ({ device }) => changeDevice(device, null),
    "passkey-added": ({ member, by, at }) => changeKeys(member === "" ? by : member, 1, at),
    "passkey-removed": ({ member, at }) => changeKeys(member, -1, at),
    "signed-in": ({ by, at }) => void signIns.add(actKey(by, at)),
    invited: ({ by, role, at }) => void invitations.add(actKey(by, role, at)),
  };

  return {
    take(entry, position) {
      const told = roots.tellingOf(entry, position);
      const { kind, at } = entry.header;
      const isAct = entry.header.device === serviceDevice && kind === "access-noted";
      const act = isAct ? actOf(entry) : null;
      // A device that is new is noted after the entries by whose push it became somebody's: those wait for it.
      if (act?.act !== "device-registered" && (isAct || isNoting)) settle();
      if (told) waiting.push(told);
      isNoting = isAct;
      if (!isAct) return;
      if (act === null) unknownActs += 1;
      else {
        acts += 1;
        const { by, member = "", role = "", device = "", apiary = "" } = act;
        changes[act.act]?.({ by, member, role, device, apiary, at, position });
      }
    },
    told() {
      settle();
      const { scopes, parents } = roots;
      return { ...{ members, devices, keys, signIns, invitations, scopes, parents }, acts, unknownActs };
    },
  };
}

/** The act of a note of the service; null when it cannot be known. */
function actOf({ body }: Entry): Act | null {
  const read = kinds["access-noted"].body.safeParse(body?.data);
  return read.success ? read.data : null;
}
