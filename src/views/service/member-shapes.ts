/** Shapes that the routes of the book of members take and give. */
import * as z from "zod";
import { roles } from "../../access/index.ts";

/** What is to stand in the journal or in a table: halves of characters cannot be sealed, PostgreSQL keeps no null. */
const isStorable = (given: string): boolean => given.isWellFormed() && !given.includes("\0");
const storable = z.string().refine(isStorable, { message: "text of whole characters, none of them null" });
/** What people write in a line. */
const text = storable.trim().min(1).max(200);
export const reason = storable.trim().min(1).max(2000);
const id = storable.min(1).max(2000);
/** How a device calls itself. */
export const deviceId = storable.min(1).max(200);
export const role = z.enum(roles);
/** How a member is called by others and signs in. */
export const name = text.max(80);
/** Its rules are told in words by the table of access, not by this shape. */
export const password = z.string().min(1).max(1000);

export const member = z.strictObject({
  id,
  name: text,
  role,
  hasExactPlaces: z.boolean(),
  hasPassword: z.boolean(),
  admittedAt: text,
  endedAt: text.nullable(),
});

export const session = z.strictObject({
  id,
  member: id,
  device: id.nullable(),
  client: text,
  beganAt: text,
  seenAt: text,
  endsAt: text,
  isThis: z.boolean(),
});

export const device = z.strictObject({
  device: id,
  member: id,
  name: z.string().max(200),
  registeredAt: text,
  lostAt: text.nullable(),
});

export const invitation = z.strictObject({
  id,
  role,
  by: id.nullable(),
  madeAt: text,
  endsAt: text,
  usedAt: text.nullable(),
});

export const passkey = z.strictObject({ id, name: text, madeAt: text, usedAt: text.nullable() });

export const place = z.strictObject({
  apiary: id,
  code: z.string().nullable(),
  name: z.string().nullable(),
  latitude: z.number(),
  longitude: z.number(),
  coordinateUncertaintyMetres: z.number().nullable(),
  isExact: z.boolean(),
  colonies: z.number().int(),
});

export const audited = z.strictObject({
  position: z.number().int(),
  at: text,
  recordedAt: text,
  kind: text,
  about: z.array(z.string()),
  device: text,
  /** Member whose device wrote it; null when nobody registered it. */
  member: id.nullable(),
  act: z.looseObject({ act: text }).nullable(),
});

/** The one who is signed in, or why nobody is. */
export const standing = z.strictObject({
  isGuarded: z.boolean(),
  programme: z.string().nullable(),
  member: member.nullable(),
  /** Why the last session is no more; null when there was none. */
  ended: z.string().nullable(),
});
