/** The book of a programme's members: who they are, how they come in, on which devices, and whose each case is. */
import type { Entry, EntryHeader } from "../journal/index.ts";
import type { Problem, Result } from "../units/index.ts";
import type { Page, PushReply } from "./contract.ts";

export interface Member {
  readonly id: string;
  readonly name: string;
  readonly role: string;
  readonly hasExactPlaces: boolean;
  readonly hasPassword: boolean;
  readonly admittedAt: string;
  /** Null while the member may come in. */
  readonly endedAt: string | null;
}

export interface Session {
  readonly id: string;
  readonly member: string;
  readonly device: string | null;
  /** Browser and system, as far as it told them. */
  readonly client: string;
  readonly beganAt: string;
  readonly seenAt: string;
  readonly endsAt: string;
  readonly endedAt: string | null;
  readonly why: string | null;
}

export interface Invitation {
  readonly id: string;
  readonly role: string;
  readonly by: string | null;
  readonly madeAt: string;
  readonly endsAt: string;
  readonly usedAt: string | null;
}

export interface Device {
  readonly device: string;
  readonly member: string;
  readonly name: string;
  readonly registeredAt: string;
  readonly lostAt: string | null;
}

export interface Passkey {
  readonly id: string;
  readonly member: string;
  /** As the page gave it, base64url. */
  readonly publicKey: string;
  readonly counter: number;
  readonly transports: readonly string[];
  readonly name: string;
  readonly madeAt: string;
  readonly usedAt: string | null;
}

/** What is needed to judge a password: never leaves the service. */
export interface Credential {
  readonly member: string;
  readonly password: string | null;
  /** Until when it can be exchanged for one that the member chooses, and do nothing else; null: it is the chosen one. */
  readonly endsAt: string | null;
  readonly failures: number;
  readonly failedAt: string | null;
}

/** Who does something, and when: the member, or null for someone at the machine itself. */
export interface Doing {
  readonly by: string | null;
  /** Instant with milliseconds and Z. */
  readonly at: string;
}

/** A member in a session, or why there is none. */
export type Standing =
  | { readonly member: Member; readonly session: Session }
  | { readonly ended: "unknown" | "over" | "signed-out" | "ended" | "device-lost" | "member-ended" };

export interface NewPassword {
  readonly member: string;
  /** As it is kept. */
  readonly password: string;
  /** When a drawn one runs out; left out: it is the member's own. */
  readonly endsAt?: string;
  /** The session that goes on; left out: none. */
  readonly keep?: string;
  /** The password as it is kept now, in whose place alone it comes; left out: whatever there is. */
  readonly inPlaceOf?: string;
}

export interface NewSession {
  readonly member: string;
  /** SHA-256 of the token. */
  readonly hash: string;
  readonly client: string;
  readonly endsAt: string;
}

export interface MemberBook {
  /** Whether anyone may come in at all: then nobody else may. */
  readonly hasMembers: () => Promise<boolean>;
  readonly hasAdministrator: () => Promise<boolean>;
  readonly members: () => Promise<readonly Member[]>;
  /** A member with a password, or with none until a passkey is added. Blocked when the name is taken. */
  readonly admit: (
    given: {
      readonly name: string;
      readonly role: string;
      readonly password: string | null;
      /** When a drawn password runs out; left out: it is the member's own. */
      readonly passwordEndsAt?: string;
    },
    doing: Doing,
  ) => Promise<Result<Member>>;
  readonly invite: (
    given: { readonly role: string; readonly hash: string; readonly endsAt: string },
    doing: Doing,
  ) => Promise<Invitation>;
  readonly invitations: () => Promise<readonly Invitation[]>;
  /** An invitation that can still be used; null for any other. */
  readonly invitation: (hash: string, at: string) => Promise<Invitation | null>;
  readonly cancelInvitation: (id: string, doing: Doing) => Promise<boolean>;
  /** Uses an invitation up: of two at once, one becomes a member. */
  readonly accept: (
    hash: string,
    given: { readonly name: string; readonly password: string | null },
    at: string,
  ) => Promise<Result<Member>>;
  /** Blocked when it would leave the programme without an administrator. Ending a member ends the sessions. */
  readonly change: (
    member: string,
    to: { readonly role?: string; readonly hasExactPlaces?: boolean; readonly ended?: true },
    doing: Doing,
  ) => Promise<Result<Member>>;
  /** Ends every session of the member but the one to keep. False, and nothing done, when it comes in place of another. */
  readonly setPassword: (given: NewPassword, doing: Doing) => Promise<boolean>;
  readonly credential: (signInName: string) => Promise<Credential | null>;
  readonly noteFailure: (member: string, at: string) => Promise<void>;

  readonly beginSession: (given: NewSession, at: string) => Promise<Session>;
  /** Who holds the token; seen now. */
  readonly standing: (hash: string, at: string, idleUntil: (seenAt: string) => string) => Promise<Standing>;
  /** Sessions that go on; of one member, or all. */
  readonly sessions: (member: string | null, at: string) => Promise<readonly Session[]>;
  readonly endSession: (id: string, why: "signed-out" | "ended", doing: Doing) => Promise<boolean>;
  /** Ties the session to the device that it is used on, and the device to the member. */
  readonly registerDevice: (
    given: { readonly device: string; readonly name: string; readonly session: string; readonly mayClaim: boolean },
    doing: Doing & { readonly by: string },
  ) => Promise<Result<Device>>;
  readonly devices: () => Promise<readonly Device[]>;
  /** Ends the sessions on the device; what it sends from here on is kept apart. */
  readonly loseDevice: (device: string, doing: Doing) => Promise<Result<Device>>;
  readonly returnDevice: (device: string, doing: Doing) => Promise<Result<Device>>;

  readonly giveApiary: (member: string, apiary: string, doing: Doing) => Promise<Result<null>>;
  readonly takeApiary: (member: string, apiary: string, doing: Doing) => Promise<Result<null>>;
  /** Roots that are the member's, each from a position on. */
  readonly rootsOf: (member: string) => Promise<readonly string[]>;

  readonly passkeys: (member: string) => Promise<readonly Passkey[]>;
  readonly passkey: (id: string) => Promise<Passkey | null>;
  readonly addPasskey: (given: Omit<Passkey, "madeAt" | "usedAt">, doing: Doing) => Promise<void>;
  readonly removePasskey: (id: string, member: string, doing: Doing) => Promise<boolean>;
  readonly notePasskeyUse: (id: string, counter: number, at: string) => Promise<void>;
  readonly putChallenge: (given: {
    readonly hash: string;
    readonly purpose: string;
    readonly member: string | null;
    readonly endsAt: string;
  }) => Promise<void>;
  /** Takes a question back once: null when it was never put, was answered before, or is over. */
  readonly takeChallenge: (
    hash: string,
    purpose: string,
    at: string,
  ) => Promise<{ readonly member: string | null } | null>;

  /** Every entry written on the member's devices and, by root, about what is the member's, in the order taken in. */
  readonly entriesOf: (member: string, byRoot: boolean) => Promise<readonly Entry[]>;
  /**
   * Erases the account, and of a keeper the bodies of every entry about his or her roots, by entries that say so. What
   * others opened about others' apiaries is not a member's own, whoever wrote it down.
   */
  readonly erase: (member: string, reason: string, doing: Doing) => Promise<Result<{ readonly erased: number }>>;

  /** Writes an act into the journal that changes nothing in the book, such as an export. */
  readonly note: (
    act: { readonly act: "data-exported" | "accounts-left-behind"; readonly member?: string },
    doing: Doing,
  ) => Promise<void>;

  /** The journal as the member may ask for it: entries with whose they are. The cursor moves over what is not given. */
  readonly pull: (asker: PullAsker, cursor: number, limit?: number) => Promise<MemberPage>;
  /** Takes entries in from a member's devices. */
  readonly push: (entries: readonly Entry[], pusher: Pusher) => Promise<PushReply>;
  /** The newest entries before a position, newest first, with the member whose device wrote each. */
  readonly audit: (before: number | null, limit: number) => Promise<readonly Audited[]>;
}

export interface PullAsker {
  readonly member: string;
  /** Whether only roots of the member and of everyone are looked at. */
  readonly onlyOwn: boolean;
  /** Whether the member's roots make entries of others his own. */
  readonly byRoot: boolean;
}

export type Whose = "own" | "other" | "common";

export interface MemberPage extends Omit<Page, "entries"> {
  readonly entries: readonly { readonly entry: Entry; readonly whose: Whose }[];
}

export interface Audited {
  readonly position: number;
  readonly header: EntryHeader;
  /** The act, when the entry is one of the book's. */
  readonly data: Readonly<Record<string, unknown>> | null;
  readonly member: string | null;
}

/** What the service knows of an entry that a member sends. */
export interface SentEntry {
  readonly entry: Entry;
  readonly root: Whose;
  readonly named: readonly Whose[];
  readonly replacesOwn: boolean;
}

export interface Pusher extends Doing {
  readonly by: string;
  /** Whether the member may take over a device that wrote here before there were members. */
  readonly mayClaim: boolean;
  /** Why an entry may not be added; null when it may. */
  readonly trouble: (sent: SentEntry) => Problem | null;
}
