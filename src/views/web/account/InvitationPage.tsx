/** An invitation is used: its secret stands behind the # of the address, which no browser sends to a service. */
import { type FormEvent, useEffect, useState } from "react";
import { useLocation } from "wouter";
import type { Role } from "../../../access/index.ts";
import { accountWords } from "../../words/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { fieldsOf, TextField } from "../parts/Form.tsx";
import { ask } from "./ask.ts";
import { comeIn, usualName } from "./come-in.ts";
import { Says, SecretField } from "./SecretField.tsx";
import { useSession } from "./SessionProvider.tsx";
import "./account.css";

interface Looked {
  readonly role: Role;
  readonly endsAt: string;
}

export default function InvitationPage() {
  const [secret] = useState(() => location.hash.slice(1));
  const [looked, setLooked] = useState<Looked | "looking" | "over">("looking");
  const [says, setSays] = useState<readonly string[]>([]);
  const [, go] = useLocation();
  const { take } = useSession();
  const say = accountWords.invitation;
  useEffect(() => {
    let here = true;
    // Not left in the history of a browser that others use.
    history.replaceState(null, "", location.pathname);
    void ask<Looked>("POST", "/api/invitation", accountWords.signIn.unreached, { secret }).then(
      (reply) => here && setLooked(reply.ok ? reply.value : "over"),
    );
    return () => {
      here = false;
    };
  }, [secret]);
  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const { name = "", password = "", device = "" } = fieldsOf(event.currentTarget);
    const reply = await comeIn("/api/invitation/acceptance", { secret, name, password }, device || usualName());
    if (!reply.ok) return setSays(reply.says);
    take(reply.value);
    return go("/members");
  };
  return (
    <main id="page" className="plain account-page">
      {looked === "looking" ? <p className="plain busy">{say.looking}</p> : null}
      {looked === "over" ? <Answer text={say.over} /> : null}
      {typeof looked === "object" ? (
        <>
          <Answer
            text={say.answer({ role: looked.role, until: looked.endsAt.slice(0, 10) })}
            under={say.under({ says: accountWords.roleSays[looked.role] })}
          />
          <form className="form" onSubmit={(event) => void send(event)}>
            <fieldset>
              <TextField name="name" label={say.name} hint={say.nameHint} problems={[]} fill="username" />
              <SecretField name="password" label={say.password} hint={say.passwordHint} fill="new-password" />
              <TextField
                name="device"
                label={accountWords.signIn.device}
                hint={accountWords.signIn.deviceHint}
                problems={[]}
                value={usualName()}
                wide
              />
            </fieldset>
            <Says says={says} />
            <p className="acts">
              <button type="submit" className="press">
                {say.send}
              </button>
            </p>
          </form>
        </>
      ) : null}
    </main>
  );
}
