/** Whether name and password go together, asked slowly by whoever was wrong before. */
import type { Credential, ServerStore } from "../../storage/server.ts";
import { type Problem, problem } from "../../units/index.ts";
import { fits } from "./passwords.ts";

/** Wrong passwords that cost nothing. A choice of ours. */
const freeFailures = 5;
/** Longest wait between two tries: an account is slowed down, never locked, so that nobody can lock another out. */
const longestWaitSeconds = 300;
/** Names without an account that are remembered, so that they are slowed down like the others. */
const mostUnknown = 1000;

type Failed = Pick<Credential, "failures" | "failedAt">;

/** Seconds until the next try: none at first, then doubling. */
function waitSeconds({ failures, failedAt }: Failed, now: number): number {
  if (failures < freeFailures || failedAt === null) return 0;
  const wait = Math.min(longestWaitSeconds, 2 ** (failures - freeFailures + 1));
  return Math.max(0, Math.ceil((Date.parse(failedAt) + wait * 1000 - now) / 1000));
}

/** What came of a password: whose it is, how it is kept, and whether it was drawn and is to be exchanged; or why it does not do. */
export type Checked =
  | { readonly ok: true; readonly member: string; readonly kept: string; readonly isDrawn: boolean }
  /** The member is whose account was tried: for the log alone, never told to who asks. */
  | { readonly ok: false; readonly member: string | null; readonly problem: Problem };

export type PasswordCheck = (store: ServerStore | null, name: string, password: string) => Promise<Checked>;

/** Gives the member, or one answer for every way of being wrong. */
export function passwordCheck(now: () => number): PasswordCheck {
  const unknown = new Map<string, Failed>();
  return async (store, name, password) => {
    const at = new Date(now()).toISOString();
    const found = (await store?.members.credential(name)) ?? null;
    const key = `${store?.programme} ${name.trim().toLowerCase()}`;
    const failed = found ?? unknown.get(key);
    const member = found?.member ?? null;
    const refused = (trouble: Problem): Checked => ({ ok: false, member, problem: trouble });
    const seconds = failed ? waitSeconds(failed, now()) : 0;
    if (seconds > 0) return refused(problem("sign-in-waits", "blocked", "password", { slots: { seconds } }));
    const isRight = await fits(found?.password ?? null, password);
    if (found?.password && isRight) {
      const isOver = found.endsAt !== null && found.endsAt <= at;
      return isOver
        ? refused(over)
        : { ok: true, member: found.member, kept: found.password, isDrawn: found.endsAt !== null };
    }
    if (found) await store?.members.noteFailure(found.member, at);
    else {
      unknown.set(key, { failures: (failed?.failures ?? 0) + 1, failedAt: at });
      const [oldest] = unknown.keys();
      if (unknown.size > mostUnknown && oldest !== undefined) unknown.delete(oldest);
    }
    return refused(wrongPassword);
  };
}

export const wrongPassword: Problem = problem("sign-in-failed", "blocked", "password");
/** Told to whoever knows the password alone. */
const over: Problem = problem("password-over", "blocked", "password");
