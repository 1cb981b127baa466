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

/** On a device that was reported lost: what the service has as well goes from here. What it lacks stays, unseen. */
export async function forgetSent({ programme, id, name }: SignedIn): Promise<void> {
  try {
    const store = await openDeviceStore({ programme, owner: id, author: name });
    if (!(await removeWhatWasSent(store, id))) await store.close();
  } catch {
    // nothing is kept here, or the browser does not let it go
  }
}
