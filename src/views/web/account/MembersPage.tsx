/** Members and devices: who I am here, where I am signed in, a lost phone; for an administrator everyone. */
import { type FormEvent, useState } from "react";
import { Link, Redirect } from "wouter";
import type { Entry } from "../../../journal/index.ts";
import { accountWords } from "../../words/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { fieldsOf } from "../parts/Form.tsx";
import { saveFile, saveText } from "../parts/save.ts";
import { useCasebook } from "../store/context.ts";
import { ask } from "./ask.ts";
import { Everyone } from "./Everyone.tsx";
import { Part } from "./Part.tsx";
import { Passkeys } from "./Passkeys.tsx";
import { Says, SecretField } from "./SecretField.tsx";
import { useSession } from "./SessionProvider.tsx";
import { SignOut } from "./SignOut.tsx";
import { Sure } from "./Sure.tsx";
import type { SignedIn } from "./standing.ts";
import { type UseBook, useBook } from "./use-book.ts";
import "./account.css";

export default function MembersPage() {
  const { member, isGuarded } = useSession();
  if (!member && isGuarded) return <Redirect to="/sign-in" replace />;
  if (!member)
    return (
      <main id="page" className="plain">
        <Answer text={isGuarded === false ? accountWords.signIn.unguarded : accountWords.members.none} />
      </main>
    );
  return <Signed member={member} />;
}

function Signed({ member }: { readonly member: SignedIn }) {
  const book = useBook(member);
  const say = accountWords.members;
  return (
    <main id="page" className="plain account-page">
      <Answer text={say.answer(member)} under={say.under({ says: accountWords.roleSays[member.role] })} />
      <SignOut member={member} />
      {member.role === "administrator" ? (
        <p className="acts">
          <Link className="act" href="/members/audit">
            {say.audit}
          </Link>{" "}
          <Link className="act" href="/records/apart">
            {say.apart}
          </Link>
        </p>
      ) : null}
      <Says says={book.says} />
      {member.role === "administrator" ? <Everyone book={book} own={member.id} /> : null}
      <Devices book={book} own={member.id} />
      <Sessions book={book} />
      <Password book={book} own={member.id} />
      <Passkeys member={member} />
      <Data member={member} />
    </main>
  );
}

interface PartProps {
  readonly book: UseBook;
  readonly own: string;
}

function Devices({ book: { book, change }, own }: PartProps) {
  const { device: here } = useCasebook();
  const say = accountWords.members;
  const mine = book.devices.filter(({ member }) => member === own);
  return (
    <Part head={say.devicesHead} under={say.devicesUnder}>
      <ul className="lines">
        {mine.map(({ device, name, registeredAt, lostAt }) => (
          <li key={device}>
            <span>
              <b>{name || say.unnamed}</b> {device === here ? <span className="q3">{say.thisDevice}</span> : null}
            </span>
            <span className="q2">
              {lostAt ? say.lost : say.inUse}, <time>{(lostAt ?? registeredAt).slice(0, 10)}</time>
            </span>
            {lostAt ? null : (
              <Sure
                says={say.reportLost({ device: name || say.unnamed })}
                sure={say.sureLost}
                act={() => void change("POST", `/devices/${encodeURIComponent(device)}/loss`)}
              />
            )}
          </li>
        ))}
      </ul>
    </Part>
  );
}

function Sessions({ book: { book, change } }: Pick<PartProps, "book">) {
  const say = accountWords.members;
  const named = (device: string | null) => book.devices.find((each) => each.device === device)?.name ?? "";
  return (
    <Part head={say.sessionsHead}>
      <ul className="lines">
        {book.sessions.map(({ id, client, device, seenAt, isThis }) => (
          <li key={id}>
            <span>
              <b>{client}</b> {named(device)} {isThis ? <span className="q3">{say.thisSession}</span> : null}
            </span>
            <span className="q2">
              {say.lastSeen} <time>{seenAt.slice(0, 10)}</time>
            </span>
            {isThis ? null : (
              <button type="button" className="act" onClick={() => void change("DELETE", `/sessions/${id}`)}>
                {say.endSession({ client })}
              </button>
            )}
          </li>
        ))}
      </ul>
    </Part>
  );
}

function Password({ book: { change }, own }: PartProps) {
  const [isChanged, setChanged] = useState(false);
  const say = accountWords.members;
  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const { old = "", next = "" } = fieldsOf(form);
    const reply = await change("POST", `/members/${own}/password`, { old, new: next });
    setChanged(reply.ok);
    if (reply.ok) form.reset();
  };
  return (
    <Part head={say.passwordHead}>
      <form className="line-form" onSubmit={(event) => void send(event)}>
        <SecretField name="old" label={say.oldPassword} fill="current-password" />
        <SecretField name="next" label={say.newPassword} fill="new-password" />
        <button type="submit" className="press quiet">
          {say.changePassword}
        </button>
      </form>
      <p role="status">{isChanged ? say.passwordChanged : ""}</p>
    </Part>
  );
}

function Data({ member }: { readonly member: SignedIn }) {
  const [says, setSays] = useState<readonly string[]>([]);
  const { today } = useCasebook();
  const say = accountWords.members;
  const save = async () => {
    const address = `/api/programmes/${member.programme}/members/${member.id}/data`;
    const reply = await ask<{ readonly entries: readonly Entry[] }>("GET", address, accountWords.signIn.unreached);
    if (!reply.ok) return setSays(reply.says);
    const [name, text] = [`skepsis-${member.programme}-${today}`, JSON.stringify(reply.value, null, 2)];
    const { archiveWith, filesNamedBy } = await import("../../../transfer/index.ts");
    const named = filesNamedBy(reply.value.entries);
    if (named.length === 0) return saveText(`${name}.json`, "application/json", text);
    const files = [];
    for (const sha256 of named) {
      const sent = await fetch(`/api/programmes/${member.programme}/files/${sha256}`).catch(() => null);
      if (sent?.ok) files.push({ sha256, bytes: new Uint8Array(await sent.arrayBuffer()) });
    }
    return saveFile(`${name}.zip`, new Blob([archiveWith("data.json", text, files)], { type: "application/zip" }));
  };
  return (
    <Part head={say.dataHead} under={say.dataUnder}>
      <p className="acts">
        <button type="button" className="press quiet" onClick={() => void save()}>
          {say.takeData}
        </button>
      </p>
      <Says says={says} />
    </Part>
  );
}
