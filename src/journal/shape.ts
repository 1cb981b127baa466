/** The outer shape every entry has, whatever its kind: what can be checked of an entry from a newer version. */
import * as z from "zod";
import { isDay, jsonTrouble } from "../units/index.ts";
import type { Entry } from "./entry.ts";

const hash = z.string().regex(/^[0-9a-f]{64}$/, { message: "64 lower-case hex digits" });
const uuid = z.string().regex(/^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/, {
  message: "an id in lower-case hex digits, 8-4-4-4-12",
});
const instantPattern =
  /^(\d{4}-\d{2}-\d{2})T([01]\d|2[0-3]):[0-5]\d(:[0-5]\d(\.\d+)?)?(Z|[+-]([01]\d|2[0-3]):[0-5]\d)$/;
const recordedAtPattern = /^\d{4}-\d{2}-\d{2}T([01]\d|2[0-3]):[0-5]\d:[0-5]\d\.\d{3}Z$/;

const isInstant = (text: string): boolean => isDay(instantPattern.exec(text)?.[1] ?? "");

/** Names that mean a device, not a file, on some machines, whatever ending follows. */
const deviceName = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/;

/** Name of a programme: it becomes the name of a file and of a database. */
export const programmeName = z
  .string()
  .regex(/^[a-z0-9](-?[a-z0-9]){0,59}$/, {
    message: "lower-case letters and digits joined by single hyphens, at most 60",
  })
  .refine((text) => !deviceName.test(text), { message: "a name that no machine keeps for a device of its own" });

const name = z.string().min(1).max(200);

/** Members that this version does not know are kept: they are part of the hash. */
const headerShape = z.looseObject({
  id: uuid,
  kind: z.string().regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, { message: "lower-case words joined by hyphens" }),
  schema: z.int().min(1),
  device: name,
  seq: z.int().min(1),
  prev: hash.nullable(),
  at: z.string().refine((text) => isDay(text) || isInstant(text), {
    message: "a day as YYYY-MM-DD, or an instant with its offset from UTC",
  }),
  recordedAt: z.string().refine((text) => recordedAtPattern.test(text) && isDay(text.slice(0, 10)), {
    message: "an instant as YYYY-MM-DDTHH:MM:SS.sssZ",
  }),
  author: name,
  programme: programmeName,
  about: z.array(name).min(1).max(50),
  replaces: z.array(uuid).max(10_000),
  content: hash,
});

const bodyShape = z.looseObject({
  salt: z.string().regex(/^[0-9a-f]{32}$/, { message: "32 lower-case hex digits" }),
  data: z.record(z.string(), z.unknown()),
});

const entryShape = z.strictObject({ header: headerShape, body: bodyShape.nullable() });

/** What keeps a value from being an entry: where, and what is expected there. Null when it is one. */
export interface Misfit {
  readonly path: string;
  readonly expected: string;
}

/**
 * Looks at the outer shape alone: header members, salt, data, and that all of it can be hashed and written. The body
 * is not read by its kind.
 * @returns null when the value has the shape of an entry
 */
export function entryMisfit(value: unknown): Misfit | null {
  const parsed = entryShape.safeParse(value);
  if (parsed.success) {
    const expected = jsonTrouble(value);
    return expected === null ? null : { path: "", expected };
  }
  const [issue] = parsed.error.issues;
  return { path: issue?.path.join(".") ?? "", expected: issue?.message ?? "an entry" };
}

/** Whether a value has the outer shape of an entry. */
export const isEntry = (value: unknown): value is Entry => entryMisfit(value) === null;
