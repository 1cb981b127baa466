/** A passkey is taken away: pressed once it asks for the password, sent with it it is done. */
import { type FormEvent, useState } from "react";
import { accountWords } from "../../words/index.ts";
import { fieldsOf } from "../parts/Form.tsx";
import type { Reply } from "./ask.ts";
import { Says, SecretField } from "./SecretField.tsx";

export function TakeAway(props: {
  readonly name: string;
  readonly act: (password: string) => Promise<Reply<unknown>>;
}) {
  const { name, act } = props;
  const [isAsked, setAsked] = useState(false);
  const [says, setSays] = useState<readonly string[]>([]);
  const say = accountWords.passkeys;
  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const { proof = "" } = fieldsOf(event.currentTarget);
    const reply = await act(proof);
    if (!reply.ok) setSays(reply.says);
  };
  if (!isAsked)
    return (
      <button type="button" className="act" onClick={() => setAsked(true)}>
        {say.remove({ name })}
      </button>
    );
  return (
    <form className="line-form" onSubmit={(event) => void send(event)}>
      <SecretField name="proof" label={say.proof({ name })} fill="current-password" takesFocus />
      <button type="submit" className="press">
        {say.sure}
      </button>
      <button
        type="button"
        className="act"
        onClick={() => {
          setAsked(false);
          setSays([]);
        }}
      >
        {accountWords.members.no}
      </button>
      <Says says={says} />
    </form>
  );
}
