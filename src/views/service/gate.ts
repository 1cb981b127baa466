/** Who asks: the cookie becomes a member in a session, and every request about records passes here. */
import "@fastify/cookie";
import type { FastifyBaseLogger, FastifyReply, FastifyRequest } from "fastify";
import { isRole, type Role } from "../../access/index.ts";
import { programmeName } from "../../journal/index.ts";
import type { Member, ServerStore, Session, Standing } from "../../storage/server.ts";
import { type Problem, problem } from "../../units/index.ts";
import { clientName } from "./client-name.ts";
import { type Checked, passwordCheck } from "./password-check.ts";
import { newToken, tokenHash } from "./passwords.ts";
import type { Programmes } from "./programmes.ts";

/** A member as asked now. */
export interface Who {
  readonly programme: string;
  readonly store: ServerStore;
  readonly member: Member;
  readonly role: Role;
  readonly session: Session;
}

export interface GateSettings {
  readonly programmes: Programmes;
  /** Where people reach the service, when not on this machine alone: then nothing is open without a session. */
  readonly address: URL | null;
  readonly now: () => number;
}

const day = 86_400_000;
/** Unused for so long, a session is over: two weeks, so that a phone may stay in the field. A choice of ours. */
const idleDays = 14;
/** And in any case after so long. A choice of ours. */
const longestDays = 90;

export interface Gate {
  readonly settings: GateSettings;
  readonly instant: () => string;
  /** Who holds the request's session, or why there is none. */
  readonly who: (request: FastifyRequest) => Promise<Who | Extract<Standing, { readonly ended: string }>>;
  /** Whether a programme asks for a session: always where others can reach the service, else once it has a member. */
  readonly isGuarded: (programme: string) => Promise<boolean>;
  /** Begins a session and gives its token to the browser in a cookie. */
  readonly begin: (
    request: FastifyRequest,
    reply: FastifyReply,
    given: { readonly store: ServerStore; readonly member: Member },
  ) => Promise<void>;
  readonly forget: (reply: FastifyReply) => void;
  /** Whether name and password go together; a refusal stands in the log, by the id of the member that was tried. */
  readonly checkPassword: (asked: AskedPassword) => Promise<Checked>;
}

export interface AskedPassword {
  /** Null: there is no such programme. */
  readonly store: ServerStore | null;
  readonly name: string;
  readonly password: string;
  readonly log: FastifyBaseLogger;
}

/** Notes a refused sign-in: by the id of the member alone, and never what was typed. */
export const logRefusal = (
  log: FastifyBaseLogger,
  refused: { readonly code: string; readonly programme: string | null; readonly member: string | null },
): void => log.warn({ authentication: refused.code, programme: refused.programme, member: refused.member });

export const signInNeeded: Problem = problem("sign-in-needed", "blocked", null);

export function gateOf(settings: GateSettings): Gate {
  const { programmes, address, now } = settings;
  const isSecure = address?.protocol === "https:";
  /** With this beginning a browser takes the cookie from this very host alone, and only over TLS. */
  const cookie = isSecure ? "__Host-skepsis" : "skepsis";
  const options = { path: "/", httpOnly: true, sameSite: "strict", secure: isSecure } as const;
  const instant = () => new Date(now()).toISOString();
  const check = passwordCheck(now);
  const idleUntil = (seenAt: string) => new Date(Date.parse(seenAt) + idleDays * day).toISOString();

  return {
    settings,
    instant,
    async who(request) {
      const token = request.cookies[cookie];
      const [programme = "", secret = ""] = token?.split(".") ?? [];
      if (secret === "" || !programmeName.safeParse(programme).success) return { ended: "unknown" };
      const store = await programmes.find(programme);
      const standing = await store?.members.standing(tokenHash(token ?? ""), instant(), idleUntil);
      if (!store || !standing) return { ended: "unknown" };
      if ("ended" in standing) return standing;
      const { member, session } = standing;
      return isRole(member.role) ? { programme, store, member, role: member.role, session } : { ended: "unknown" };
    },
    async isGuarded(programme) {
      if (address !== null) return true;
      const store = await programmes.find(programme);
      return store !== null && (await store.members.hasMembers());
    },
    async begin(request, reply, { store, member }) {
      const token = `${store.programme}.${newToken()}`;
      const endsAt = new Date(now() + longestDays * day).toISOString();
      const client = clientName(request.headers["user-agent"]);
      await store.members.beginSession({ member: member.id, hash: tokenHash(token), client, endsAt }, instant());
      reply.setCookie(cookie, token, { ...options, maxAge: longestDays * 86_400 });
    },
    async checkPassword({ store, name, password, log }) {
      const checked = await check(store, name, password);
      const programme = store?.programme ?? null;
      if (!checked.ok) logRefusal(log, { code: checked.problem.code, programme, member: checked.member });
      return checked;
    },
    forget: (reply) => void reply.clearCookie(cookie, options),
  };
}
