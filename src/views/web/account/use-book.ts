/** The book of members as this member may see it, read again after each change. */
import { useCallback, useEffect, useState } from "react";
import type { Role } from "../../../access/index.ts";
import { accountWords } from "../../words/index.ts";
import { ask, type Reply } from "./ask.ts";
import type { SignedIn } from "./standing.ts";

export interface BookMember {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly hasExactPlaces: boolean;
  readonly admittedAt: string;
  readonly endedAt: string | null;
}
export interface BookDevice {
  readonly device: string;
  readonly member: string;
  readonly name: string;
  readonly registeredAt: string;
  readonly lostAt: string | null;
}
export interface BookSession {
  readonly id: string;
  readonly client: string;
  readonly device: string | null;
  readonly seenAt: string;
  readonly isThis: boolean;
}
export interface BookInvitation {
  readonly id: string;
  readonly role: Role;
  readonly endsAt: string;
  readonly usedAt: string | null;
}

export interface Book {
  readonly members: readonly BookMember[];
  readonly devices: readonly BookDevice[];
  readonly sessions: readonly BookSession[];
  readonly invitations: readonly BookInvitation[];
}

const empty: Book = { members: [], devices: [], sessions: [], invitations: [] };

export interface UseBook {
  readonly book: Book;
  readonly says: readonly string[];
  /** Sends a change and reads the book again. */
  readonly change: <T>(method: "POST" | "DELETE", path: string, body?: object) => Promise<Reply<T>>;
}

export function useBook({ id, programme, role }: SignedIn): UseBook {
  const [book, setBook] = useState(empty);
  const [says, setSays] = useState<readonly string[]>([]);
  const base = `/api/programmes/${programme}`;
  const read = useCallback(async () => {
    const get = <T>(path: string) => ask<T>("GET", `${base}${path}`, accountWords.signIn.unreached);
    const [listed, sessions, invitations] = await Promise.all([
      get<Pick<Book, "members" | "devices">>("/members"),
      get<Pick<Book, "sessions">>(`/members/${id}/sessions`),
      role === "administrator" ? get<Pick<Book, "invitations">>("/invitations") : null,
    ]);
    if (!listed.ok) return setSays(listed.says);
    if (!sessions.ok) return setSays(sessions.says);
    const open = invitations?.ok ? invitations.value.invitations : [];
    return setBook({ ...listed.value, ...sessions.value, invitations: open });
  }, [base, id, role]);
  useEffect(() => void read(), [read]);
  const change = async <T>(method: "POST" | "DELETE", path: string, body?: object): Promise<Reply<T>> => {
    const reply = await ask<T>(method, `${base}${path}`, accountWords.signIn.unreached, body);
    setSays(reply.ok ? [] : reply.says);
    if (reply.ok) await read();
    return reply;
  };
  return { book, says, change };
}
