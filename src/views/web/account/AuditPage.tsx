/** The audit: who did what and when, from the journal, newest first. */
import { useCallback, useEffect, useState } from "react";
import { accountWords } from "../../words/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { ask } from "./ask.ts";
import { Says } from "./SecretField.tsx";
import { useSession } from "./SessionProvider.tsx";
import type { SignedIn } from "./standing.ts";
import { type BookMember, useBook } from "./use-book.ts";
import "./account.css";

interface Audited {
  readonly position: number;
  readonly recordedAt: string;
  readonly kind: string;
  readonly about: readonly string[];
  readonly device: string;
  readonly member: string | null;
  readonly act: Readonly<Record<string, string | null>> | null;
}

export default function AuditPage() {
  const { member } = useSession();
  if (member?.role !== "administrator")
    return (
      <main id="page" className="plain">
        <Answer text={accountWords.audit.forAdministrators} />
      </main>
    );
  return <Audit member={member} />;
}

const pageSize = 100;

function Audit({ member }: { readonly member: SignedIn }) {
  const { book } = useBook(member);
  const [entries, setEntries] = useState<readonly Audited[]>([]);
  const [says, setSays] = useState<readonly string[]>([]);
  const say = accountWords.audit;
  const { programme } = member;
  const read = useCallback(
    async (before: number | null) => {
      const query = before === null ? "" : `&before=${before}`;
      const address = `/api/programmes/${programme}/audit?limit=${pageSize}${query}`;
      const reply = await ask<{ entries: readonly Audited[] }>("GET", address, accountWords.signIn.unreached);
      if (!reply.ok) return setSays(reply.says);
      return setEntries((known) => (before === null ? reply.value.entries : [...known, ...reply.value.entries]));
    },
    [programme],
  );
  useEffect(() => void read(null), [read]);
  const last = entries.at(-1);
  return (
    <main id="page" className="plain account-page">
      <Answer text={say.answer} under={say.under} />
      <Says says={says} />
      <table className="by-row audit">
        <thead>
          <tr>
            <th scope="col">{say.when}</th>
            <th scope="col">{say.who}</th>
            <th scope="col">{say.what}</th>
          </tr>
        </thead>
        <tbody>
          {entries.map((entry) => (
            <tr key={entry.position}>
              <td>
                <time>{entry.recordedAt.slice(0, 16).replace("T", " ")}</time>
              </td>
              <td>{whoOf(entry, book.members)}</td>
              <td>{whatOf(entry, book.members)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {last && last.position > 1 ? (
        <p className="acts">
          <button type="button" className="press quiet" onClick={() => void read(last.position)}>
            {say.more}
          </button>
        </p>
      ) : null}
    </main>
  );
}

const nameOf = (id: string | null | undefined, members: readonly BookMember[]): string =>
  members.find((each) => each.id === id)?.name ?? id ?? "";

function whoOf({ act, member }: Audited, members: readonly BookMember[]): string {
  const say = accountWords.audit;
  if (act) return act.by ? nameOf(act.by, members) : say.machine;
  return member ? nameOf(member, members) : say.unknownMember;
}

function whatOf({ act, kind, about, device }: Audited, members: readonly BookMember[]): string {
  const say = accountWords.audit;
  if (!act) return say.wrote({ kind: kind.replaceAll("-", " "), about: about[0] ?? device });
  const more = [act.role ? say.as({ role: act.role }) : "", act.device ?? "", act.apiary ?? ""];
  const whom = act.member && act.member !== act.by ? nameOf(act.member, members) : "";
  return say.did({ act: act.act ?? "", whom, more: more.filter((each) => each !== "").join(" ") });
}
