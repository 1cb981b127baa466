/** One's own passkeys: listed, made, taken away. */
import { type FormEvent, useCallback, useEffect, useState } from "react";
import { accountWords } from "../../words/index.ts";
import { fieldsOf, TextField } from "../parts/Form.tsx";
import { ask } from "./ask.ts";
import { Part } from "./Part.tsx";
import { canUsePasskeys, makePasskey } from "./passkeys.ts";
import { Says, SecretField } from "./SecretField.tsx";
import type { SignedIn } from "./standing.ts";
import { TakeAway } from "./TakeAway.tsx";

interface Kept {
  readonly id: string;
  readonly name: string;
  readonly madeAt: string;
}

export function Passkeys({ member }: { readonly member: SignedIn }) {
  const [kept, setKept] = useState<readonly Kept[]>([]);
  const [says, setSays] = useState<readonly string[]>([]);
  const say = accountWords.passkeys;
  const base = `/api/programmes/${member.programme}/members/${member.id}/passkeys`;
  const read = useCallback(async () => {
    const reply = await ask<{ passkeys: readonly Kept[] }>("GET", base, accountWords.signIn.unreached);
    if (reply.ok) setKept(reply.value.passkeys);
  }, [base]);
  useEffect(() => void read(), [read]);
  if (!canUsePasskeys()) return null;
  const make = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const { proof = "", called = "" } = fieldsOf(form);
    const reply = await makePasskey(member, proof, called);
    setSays(reply.ok ? [] : reply.says);
    if (!reply.ok) return;
    form.reset();
    await read();
  };
  const remove = async (id: string, password: string) => {
    const address = `${base}/${encodeURIComponent(id)}/removal`;
    const reply = await ask("POST", address, accountWords.signIn.unreached, { password });
    if (reply.ok) await read();
    return reply;
  };
  return (
    <Part head={say.head} under={say.under}>
      <ul className="lines">
        {kept.map(({ id, name, madeAt }) => (
          <li key={id}>
            <b>{name}</b>
            <time>{madeAt.slice(0, 10)}</time>
            <TakeAway name={name} act={(password) => remove(id, password)} />
          </li>
        ))}
      </ul>
      <form className="line-form" onSubmit={(event) => void make(event)}>
        <TextField name="called" label={say.name} problems={[]} value={say.usualName} />
        <SecretField name="proof" label={accountWords.members.oldPassword} fill="current-password" />
        <button type="submit" className="press quiet">
          {say.make}
        </button>
      </form>
      <Says says={says} />
    </Part>
  );
}
