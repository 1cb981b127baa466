/** Passkeys in the browser: made, and used to sign in. */
import { browserSupportsWebAuthn, startAuthentication, startRegistration } from "@simplewebauthn/browser";
import { accountWords } from "../../words/index.ts";
import { ask, type Reply } from "./ask.ts";
import { comeIn } from "./come-in.ts";
import type { SignedIn, Standing } from "./standing.ts";

type Questions = Parameters<typeof startAuthentication>[0]["optionsJSON"];
type Makings = Parameters<typeof startRegistration>[0]["optionsJSON"];

export const canUsePasskeys = (): boolean => browserSupportsWebAuthn();

const say = accountWords.passkeys;
const unreached = accountWords.signIn.unreached;
const called = (): Reply<never> => ({ ok: false, says: [say.calledOff] });

/** Signs in by a passkey that this device, or one near it, holds. */
export async function comeInByPasskey(programme: string, deviceName: string): Promise<Reply<Standing>> {
  const question = await ask<Questions>("POST", "/api/session/passkey-question", unreached, { programme });
  if (!question.ok) return question;
  try {
    const response = await startAuthentication({ optionsJSON: question.value });
    return await comeIn("/api/session/passkey", { programme, response }, deviceName);
  } catch {
    return called();
  }
}

/** Makes a passkey for the member who is signed in. */
export async function makePasskey(member: SignedIn, password: string, name: string): Promise<Reply<void>> {
  const base = `/api/programmes/${member.programme}/members/${member.id}/passkeys`;
  const question = await ask<Makings>("POST", `${base}/question`, unreached, { password });
  if (!question.ok) return question;
  try {
    const response = await startRegistration({ optionsJSON: question.value });
    return await ask<void>("POST", base, unreached, { name, response });
  } catch {
    return called();
  }
}
