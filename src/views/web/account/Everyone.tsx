/** What an administrator sees besides: every member, invitations, and whose each apiary is. */
import { type FormEvent, useState } from "react";
import { type Role, roles } from "../../../access/index.ts";
import { settled } from "../../../casebook/index.ts";
import { accountWords } from "../../words/index.ts";
import { ChoiceField, fieldsOf, TextField } from "../parts/Form.tsx";
import { useCasebook } from "../store/context.ts";
import { Part } from "./Part.tsx";
import { Sure } from "./Sure.tsx";
import type { BookInvitation, BookMember, UseBook } from "./use-book.ts";

interface Props {
  readonly book: UseBook;
  /** The administrator. */
  readonly own: string;
}

const roleChoices = roles.map((role) => ({ value: role, says: accountWords.roles[role] }));

export function Everyone({ book, own }: Props) {
  const say = accountWords.members;
  const present = book.book.members.filter(({ endedAt }) => endedAt === null);
  return (
    <>
      <Part head={say.membersHead({ members: present.length })}>
        <ul className="lines members">
          {book.book.members.map((member) => (
            <Line key={member.id} member={member} book={book} own={own} />
          ))}
        </ul>
      </Part>
      <Invite book={book} />
      <Give book={book} present={present} />
    </>
  );
}

function Line({ member, book: { book, change }, own }: Props & { readonly member: BookMember }) {
  const say = accountWords.members;
  const { id, name, role, hasExactPlaces, endedAt } = member;
  const devices = book.devices.filter((each) => each.member === id);
  const to = (body: object) => void change("POST", `/members/${id}`, body);
  if (endedAt !== null)
    return (
      <li>
        <span className="q3">
          {name}, {say.left({ on: endedAt.slice(0, 10) })}
        </span>
      </li>
    );
  return (
    <li>
      <b>{name}</b>
      <select aria-label={say.roleOf({ name })} value={role} onChange={(event) => to({ role: event.target.value })}>
        {roleChoices.map((each) => (
          <option key={each.value} value={each.value}>
            {each.says}
          </option>
        ))}
      </select>
      {role === "manager" ? (
        <label className="tick">
          <input
            type="checkbox"
            checked={hasExactPlaces}
            onChange={(event) => to({ hasExactPlaces: event.target.checked })}
          />
          {say.grant({ name })}
        </label>
      ) : null}
      {id === own
        ? null
        : devices.map((each) => (
            <Phone
              key={each.device}
              name={each.name || say.unnamed}
              isLost={each.lostAt !== null}
              change={change}
              device={each.device}
            />
          ))}
      {id === own ? null : (
        <>
          <Sure says={say.end({ name })} sure={say.sureEnd} act={() => to({ ended: true })} />
          <Erase id={id} name={name} change={change} />
        </>
      )}
    </li>
  );
}

function Phone(props: {
  readonly name: string;
  readonly device: string;
  readonly isLost: boolean;
  readonly change: UseBook["change"];
}) {
  const { name, device, isLost, change } = props;
  const say = accountWords.members;
  const path = `/devices/${encodeURIComponent(device)}/loss`;
  if (!isLost)
    return <Sure says={say.reportLost({ device: name })} sure={say.sureLost} act={() => void change("POST", path)} />;
  return (
    <button type="button" className="act" onClick={() => void change("DELETE", path)}>
      {say.returned({ device: name })}
    </button>
  );
}

/** Behind a fold, and only after the name was typed. */
function Erase({ id, name, change }: Pick<BookMember, "id" | "name"> & { readonly change: UseBook["change"] }) {
  const say = accountWords.members;
  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const { typed = "", reason = "" } = fieldsOf(event.currentTarget);
    await change("POST", `/members/${id}/erasure`, { name: typed, reason });
  };
  return (
    <details className="erase">
      <summary>{say.erase({ name })}</summary>
      <p className="q2">{say.eraseUnder}</p>
      <form className="line-form" onSubmit={(event) => void send(event)}>
        <TextField name="typed" label={say.eraseName} problems={[]} />
        <TextField name="reason" label={say.eraseReason} problems={[]} />
        <button type="submit" className="press quiet">
          {say.eraseNow}
        </button>
      </form>
    </details>
  );
}

function Invite({ book: { book, change } }: Pick<Props, "book">) {
  const [made, setMade] = useState<{ readonly role: Role; readonly until: string; readonly link: string } | null>(null);
  const say = accountWords.members;
  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const { role } = fieldsOf(event.currentTarget);
    const reply = await change<{ invitation: BookInvitation; secret: string }>("POST", "/invitations", { role });
    if (!reply.ok) return;
    const { invitation, secret } = reply.value;
    const link = `${location.origin}/invitation#${secret}`;
    setMade({ role: invitation.role, until: invitation.endsAt.slice(0, 10), link });
  };
  const open = book.invitations.filter(({ usedAt, endsAt }) => usedAt === null && endsAt > new Date().toISOString());
  return (
    <Part head={say.inviteHead}>
      <form className="line-form" onSubmit={(event) => void send(event)}>
        <ChoiceField name="role" label={say.inviteRole} problems={[]} choices={roleChoices} />
        <button type="submit" className="press quiet">
          {say.invite}
        </button>
      </form>
      <div role="status">
        {made ? (
          <>
            <p>{say.invited(made)}</p>
            <p>
              <input
                className="c link"
                readOnly
                aria-label={say.linkLabel}
                value={made.link}
                onFocus={(event) => event.target.select()}
              />
            </p>
          </>
        ) : null}
      </div>
      {open.length > 0 ? (
        <>
          <h3>{say.openInvitations}</h3>
          <ul className="lines">
            {open.map(({ id, role, endsAt }) => (
              <li key={id}>
                <span>{say.openInvitation({ role, until: endsAt.slice(0, 10) })}</span>
                <button type="button" className="act" onClick={() => void change("DELETE", `/invitations/${id}`)}>
                  {say.cancel}
                </button>
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </Part>
  );
}

function Give({ book: { change }, present }: Pick<Props, "book"> & { readonly present: readonly BookMember[] }) {
  const { casebook } = useCasebook();
  const [isGiven, setGiven] = useState(false);
  const say = accountWords.members;
  const apiaries = Object.values(casebook.apiaries).map(({ id, record }) => ({
    value: id,
    says: settled(record)?.name ?? id,
  }));
  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const { apiary = "", member = "" } = fieldsOf(event.currentTarget);
    setGiven((await change("POST", `/members/${member}/apiaries/${encodeURIComponent(apiary)}`)).ok);
  };
  if (apiaries.length === 0) return null;
  return (
    <Part head={say.giveHead} under={say.giveUnder}>
      <form className="line-form" onSubmit={(event) => void send(event)}>
        <ChoiceField name="apiary" label={say.apiary} problems={[]} choices={apiaries} />
        <ChoiceField
          name="member"
          label={say.member}
          problems={[]}
          choices={present.map(({ id, name }) => ({ value: id, says: name }))}
        />
        <button type="submit" className="press quiet">
          {say.give}
        </button>
      </form>
      <p role="status">{isGiven ? say.given : ""}</p>
    </Part>
  );
}
