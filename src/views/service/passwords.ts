/** Passwords as they are kept, and the secrets that stand in for them: tokens of sessions and invitations. */
import { createHash, randomBytes } from "node:crypto";
import { hash, verify } from "@node-rs/argon2";
import { passwordTrouble, shortestPassword } from "../../access/index.ts";
import { type Problem, problem } from "../../units/index.ts";

/**
 * Argon2id with 19 MiB, two passes, one lane; a salt of 16 random bytes of the library's.
 * @source OWASP Password Storage Cheat Sheet: Argon2id, at least 19 MiB of memory, 2 iterations, parallelism 1
 */
export const argon2 = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

/** The password as it is kept, spelt the same however its accents were typed. */
export const hashed = (password: string): Promise<string> => hash(password.normalize("NFC"), argon2);

/** A hash that no password fits, so that an unknown name takes as long as a known one. */
let decoy: Promise<string> | null = null;

/** Whether the password is the one that was kept; takes as long when nothing was. */
export async function fits(kept: string | null, password: string): Promise<boolean> {
  decoy ??= hashed(randomBytes(24).toString("base64"));
  const isRight = await verify(kept ?? (await decoy), password.normalize("NFC"));
  return kept !== null && isRight;
}

/** Common passwords that are long enough, without capitals; loaded when the first new password is chosen. */
let common: Promise<ReadonlySet<string>> | null = null;

/**
 * Both lists together: the second has few that are long enough, and some that the first lacks.
 * @source popular-passwords 1.0.3 (of zxcvbn's list, from 8 signs); @zxcvbn-ts/language-common 4.1.3
 * @source OWASP ASVS 5.0.0, 6.2.4: at least the 3000 most common that fit the rules of make-up
 */
export async function commonPasswords(): Promise<ReadonlySet<string>> {
  const { default: popular } = await import("popular-passwords", { with: { type: "json" } });
  const { dictionary } = await import("@zxcvbn-ts/language-common");
  const listed = [...popular, ...Object.values(dictionary["passwords-common"]).map(String)];
  return new Set(listed.filter((each) => [...each].length >= shortestPassword).map((each) => each.toLowerCase()));
}

/** Why a new password is not taken; null when it is: what the rules of access say, and that it is no common one. */
export async function newPasswordTrouble(password: string, name: string): Promise<Problem | null> {
  const trouble = passwordTrouble(password, name);
  if (trouble) return trouble;
  common ??= commonPasswords();
  return (await common).has(password.toLowerCase()) ? problem("password-common", "blocked", "password") : null;
}

/** Why a password may not take the place of the old one; null when it may. */
export async function replacementTrouble(given: {
  readonly old: string;
  readonly next: string;
  readonly name: string;
}): Promise<Problem | null> {
  if (given.next === given.old) return problem("password-same", "blocked", "password");
  return newPasswordTrouble(given.next, given.name);
}

/** A password that was drawn for somebody runs out when it was not exchanged after so long. A choice of ours. */
const drawnPasswordDays = 7;

const daysAfter = (at: string, days: number): string => new Date(Date.parse(at) + days * 86_400_000).toISOString();

/** When a password that is drawn at this instant runs out. */
export const drawnPasswordEndsAt = (at: string): string => daysAfter(at, drawnPasswordDays);

/** 256 random bits as a text that fits an address. */
export const newToken = (): string => randomBytes(32).toString("base64url");

/** An invitation that is not used is over after so long. A choice of ours. */
export const invitationDays = 7;

/** A secret that invites into a programme once, and what is kept of it. */
export function newInvitation(programme: string, at: string) {
  const secret = `${programme}.${newToken()}`;
  return { secret, hash: tokenHash(secret), endsAt: daysAfter(at, invitationDays) };
}

/** What is kept of a token. Random bits need no slow hash. */
export const tokenHash = (token: string): string => createHash("sha256").update(token).digest("hex");
