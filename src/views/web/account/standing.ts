/** Who is signed in, as the service said last: kept so that the page knows it without a connection. */
import type { Role } from "../../../access/index.ts";
import { openDeviceStore, removeWhatWasSent } from "../../../storage/device.ts";

export interface SignedIn {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly programme: string;
}

export interface Standing {
  /** Whether the service asks to sign in; null until it was asked. */
  readonly isGuarded: boolean | null;
  readonly member: SignedIn | null;
  /** Why the last session is no more; null when it goes on, or there was none. */
  readonly ended: string | null;
}

const key = "skepsis.member";

/** Who signed in on this device last and did not sign out. */
export function remembered(): SignedIn | null {
  try {
    return JSON.parse(localStorage.getItem(key) ?? "null") as SignedIn | null;
  } catch {
    return null;
  }
}

/** The programme that was signed in to last on this device. */
export function lastProgramme(): string {
  try {
    return localStorage.getItem("skepsis.programme") ?? "main";
  } catch {
    return "main";
  }
}

export function remember(member: SignedIn | null): void {
  try {
    if (member) localStorage.setItem("skepsis.programme", member.programme);
    if (member) localStorage.setItem(key, JSON.stringify(member));
    else localStorage.removeItem(key);
  } catch {
    // a browser that keeps nothing: one signs in again
  }
}

/** What the member may see, as the service named it at the last pull: when it changes, the pull begins anew. */
export const scopeOf = (member: string) => ({
  scope: () => {
    try {
      return localStorage.getItem(`skepsis.scope.${member}`);
    } catch {
      return null;
    }
  },
  keepScope: (scope: string) => {
    try {
      localStorage.setItem(`skepsis.scope.${member}`, scope);
    } catch {
      // the next pull begins anew once more
    }
  },
});

interface Said {
  readonly isGuarded: boolean;
  readonly programme: string | null;
  readonly member: Omit<SignedIn, "programme"> | null;
  readonly ended: string | null;
}

/** What the service answers about a session, as the page keeps it. */
export const standingOf = ({ isGuarded, programme, member, ended }: Said): Standing => ({
  isGuarded,
  ended,
  member: member && programme ? { id: member.id, name: member.name, role: member.role, programme } : null,
});

/** Asks the service who is signed in; null when it does not answer. */
export async function askStanding(): Promise<Standing | null> {
  try {
    const response = await fetch("/api/session", { cache: "no-store" });
    return response.ok ? standingOf((await response.json()) as Said) : null;
  } catch {
    return null;
  }
}

/**
 * What the service has as well goes from here; what it lacks stays, unseen. Resolves to whether all of it is gone: on a
 * device that was reported lost, and on one that somebody leaves to others.
 */
export async function forgetSent({ programme, id, name }: SignedIn): Promise<boolean> {
  try {
    const store = await openDeviceStore({ programme, owner: id, author: name });
    const isGone = await removeWhatWasSent(store, id);
    if (!isGone) await store.close();
    return isGone;
  } catch {
    return false; // nothing is kept here, or the browser does not let it go
  }
}

export interface NotSent {
  readonly entries: number;
  readonly files: number;
}

/** What of the member's records is on this device alone. */
export async function notSentOf({ programme, id, name }: SignedIn): Promise<NotSent> {
  const store = await openDeviceStore({ programme, owner: id, author: name });
  try {
    return { entries: await store.unsentCount(), files: (await store.unsentFiles()).length };
  } finally {
    await store.close();
  }
}

/** What this tab and browser remember of the member beside the records: what was typed and not sent, and what may be seen. */
export function forgetTraces({ id }: SignedIn): void {
  try {
    sessionStorage.clear();
    localStorage.removeItem(`skepsis.scope.${id}`);
  } catch {
    // a browser that keeps nothing has nothing to forget
  }
}
