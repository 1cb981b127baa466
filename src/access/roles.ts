/** Who may do what, apart from entries: one table of role, act, and whose thing it is. */
import { type Problem, problem } from "../units/index.ts";

/** The roles of a programme, from the fewest rights to the most. */
export const roles = ["keeper", "reader", "manager", "inspector", "reviewer", "administrator"] as const;
export type Role = (typeof roles)[number];

/** Whether a text names a role. */
export const isRole = (text: string): text is Role => (roles as readonly string[]).includes(text);

/** Whose a thing is: the asker's own, another member's, or a sum over the region that names no one. */
export const relations = ["own", "other", "region"] as const;
export type Relation = (typeof relations)[number];

/** What is asked of the service besides entries, and of whom. */
export const acts = [
  "reckon",
  "see-members",
  "invite",
  "change-member",
  "change-credentials",
  "see-sessions",
  "end-session",
  "register-device",
  "report-device-lost",
  "return-device",
  "give-apiary",
  "see-places",
  "read-audit",
  "export-data",
  "erase-data",
] as const;
export type Act = (typeof acts)[number];

const own = ["own"] as const;
const everyones = ["own", "other"] as const;

/** What every member may do with what is his or hers. */
const ofEveryone: Readonly<Partial<Record<Act, readonly Relation[]>>> = {
  reckon: own,
  "see-members": own,
  "change-credentials": own,
  "see-sessions": own,
  "end-session": own,
  "register-device": own,
  "report-device-lost": own,
  "export-data": own,
};

const table: Readonly<Record<Role, Readonly<Partial<Record<Act, readonly Relation[]>>>>> = {
  keeper: ofEveryone,
  reader: ofEveryone,
  manager: { ...ofEveryone, "see-places": ["region"] },
  inspector: { ...ofEveryone, "see-places": [...everyones, "region"] },
  reviewer: { ...ofEveryone, "see-places": [...everyones, "region"] },
  administrator: {
    reckon: own,
    "see-members": everyones,
    invite: everyones,
    "change-member": everyones,
    "change-credentials": own,
    "see-sessions": everyones,
    "end-session": everyones,
    "register-device": own,
    "report-device-lost": everyones,
    "return-device": everyones,
    "give-apiary": everyones,
    "see-places": [...everyones, "region"],
    "read-audit": ["region"],
    "export-data": everyones,
    "erase-data": everyones,
  },
};

/**
 * Whether a role may do an act to a thing that stands in this relation to the asker.
 * @example
 * mayAct("keeper", "report-device-lost", "other")  // → false
 */
export const mayAct = (role: Role, act: Act, relation: Relation): boolean =>
  table[role][act]?.includes(relation) ?? false;

/** The words for an act that a role may not do. */
export const notAllowed = (role: Role, act: Act): Problem =>
  problem("not-allowed", "blocked", null, { slots: { role, act } });
