/** Whether name and password go together, asked slowly by whoever was wrong before. */
import type { Credential, ServerStore } from "../../storage/server.ts";
import { answered, blocked, type Problem, problem, type Result } from "../../units/index.ts";
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

export type PasswordCheck = (store: ServerStore | null, name: string, password: string) => Promise<Result<string>>;

/** Gives the member's id, or one answer for every way of being wrong. */
export function passwordCheck(now: () => number): PasswordCheck {
  const unknown = new Map<string, Failed>();
  return async (store, name, password) => {
    const at = new Date(now()).toISOString();
    const found = (await store?.members.credential(name)) ?? null;
    const key = `${store?.programme} ${name.trim().toLowerCase()}`;
    const failed = found ?? unknown.get(key);
    const seconds = failed ? waitSeconds(failed, now()) : 0;
    if (seconds > 0) return blocked(problem("sign-in-waits", "blocked", "password", { slots: { seconds } }));
    if (await fits(found?.password ?? null, password)) return answered(found?.member ?? "");
    if (found) await store?.members.noteFailure(found.member, at);
    else {
      unknown.set(key, { failures: (failed?.failures ?? 0) + 1, failedAt: at });
      const [oldest] = unknown.keys();
      if (unknown.size > mostUnknown && oldest !== undefined) unknown.delete(oldest);
    }
    return blocked(wrong);
  };
}

const wrong: Problem = problem("sign-in-failed", "blocked", "password");
