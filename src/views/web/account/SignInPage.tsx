/** Sign in: name, password, and what this device is called. */
import { type FormEvent, useState } from "react";
import { Redirect } from "wouter";
import { accountWords } from "../../words/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { fieldsOf, TextField } from "../parts/Form.tsx";
import { comeIn, usualName } from "./come-in.ts";
import { canUsePasskeys, comeInByPasskey } from "./passkeys.ts";
import { Says, SecretField } from "./SecretField.tsx";
import { useSession } from "./SessionProvider.tsx";
import { lastProgramme } from "./standing.ts";
import "./account.css";

export default function SignInPage() {
  const { isGuarded, member, ended, recordsStayed, take } = useSession();
  const [says, setSays] = useState<readonly string[]>([]);
  const [isSending, setSending] = useState(false);
  /** The password was drawn: one's own is chosen with it. */
  const [isDrawn, setDrawn] = useState(false);
  const say = accountWords.signIn;
  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const { name = "", password = "", device = "", programme = "", next } = fieldsOf(event.currentTarget);
    setSending(true);
    const reply = await comeIn(
      "/api/session",
      { programme: programme || "main", name, password, ...(next ? { next } : {}) },
      device || usualName(),
    );
    setSending(false);
    if (reply.ok) return take(reply.value);
    setSays(reply.says);
    setDrawn(reply.field === "next");
  };
  const byPasskey = async () => {
    const reply = await comeInByPasskey(lastProgramme(), usualName());
    if (reply.ok) take(reply.value);
    else setSays(reply.says);
  };
  if (member) return <Redirect to="/members" replace />;
  if (isGuarded === false)
    return (
      <main id="page" className="plain">
        <Answer text={say.unguarded} />
      </main>
    );
  return (
    <main id="page" className="plain account-page">
      <Answer text={say.answer} under={say.under} />
      {ended === "device-lost" ? <p className="heed-line">{say.lost}</p> : null}
      {ended === "over" || ended === "ended" ? <p className="heed-line">{say.over}</p> : null}
      {recordsStayed ? (
        <p className="heed-line" role="alert">
          {accountWords.signOut.stayed}
        </p>
      ) : null}
      <form className="form" onSubmit={(event) => void send(event)}>
        <fieldset>
          <TextField name="name" label={say.name} problems={[]} fill="username" />
          <SecretField name="password" label={say.password} fill="current-password" />
          {isDrawn ? (
            <SecretField name="next" label={say.next} hint={accountWords.invitation.passwordHint} fill="new-password" />
          ) : null}
          <TextField name="device" label={say.device} hint={say.deviceHint} problems={[]} value={usualName()} />
          <TextField
            name="programme"
            label={say.programme}
            hint={say.programmeHint}
            problems={[]}
            value={lastProgramme()}
          />
        </fieldset>
        <Says says={says} />
        <p className="acts">
          <button type="submit" className="press" disabled={isSending}>
            {say.send}
          </button>
          {canUsePasskeys() ? (
            <button type="button" className="press quiet" disabled={isSending} onClick={() => void byPasskey()}>
              {accountWords.passkeys.use}
            </button>
          ) : null}
        </p>
      </form>
    </main>
  );
}
