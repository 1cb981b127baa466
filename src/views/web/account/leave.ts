/** Signing out, step by step: what is on this device alone is asked first, the session ends next, the records go last. */
import type { NotSent } from "./standing.ts";

export interface Leaving {
  /** What is on this device alone; rejected when that cannot be read. */
  readonly notSent: () => Promise<NotSent>;
  /** Ends the session; whether the service has said so. */
  readonly end: () => Promise<boolean>;
  /** Removes the records; whether all of them are gone. */
  readonly forget: () => Promise<boolean>;
}

/** How it ended. `stayed`: signed out, and the records that should go are still here. */
export type Left =
  | { readonly how: "out" | "gone" | "stayed" | "unreadable" | "unreached" }
  | { readonly how: "not-sent"; readonly left: NotSent };

export async function leaveDevice(removes: boolean, { notSent, end, forget }: Leaving): Promise<Left> {
  if (removes) {
    const left = await notSent().catch(() => null);
    if (left === null) return { how: "unreadable" };
    if (left.entries + left.files > 0) return { how: "not-sent", left }; // written since, in another tab
  }
  // The session lives in a cookie that only the service takes away: without it the next person would be signed in.
  if (!(await end())) return { how: "unreached" };
  if (!removes) return { how: "out" };
  return { how: (await forget().catch(() => false)) ? "gone" : "stayed" };
}
