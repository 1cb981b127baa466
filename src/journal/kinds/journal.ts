/** Bodies of the entries about the journal itself: withdrawals, erasures, noted heads. */
import * as z from "zod";
import { id, longText, text } from "./parts.ts";

/** Takes back the entries in `replaces`; nothing stands in their place. `about`: as the withdrawn entry. */
export const entryWithdrawn = z.strictObject({ reason: longText });

/** The bodies named here are erased on every device at its next exchange, for good. `about`: as the erased entries, all of one root. */
export const contentErased = z.strictObject({ entries: z.array(id).min(1), reason: longText });

const hash = z.string().regex(/^[0-9a-f]{64}$/);
const device = z.string().min(1).max(200);
const seq = z.number().int().min(1);

/** All heads of a day, to stand on reports. `about`: [programme]. */
export const headsNoted = z.strictObject({
  heads: z.array(z.strictObject({ device, seq, hash })),
});

/**
 * What a person decided on an entry that the service keeps apart, and why. Taken in: an entry of the settler's own
 * device says the same and replaces it. `about`: [programme]. One slot for each kept entry.
 */
export const keptApartSettled = z.strictObject({
  /** Hash of the kept entry's header: ids can be doubled, a hash cannot. */
  hash,
  entry: id,
  device,
  seq,
  decision: z.enum(["taken-in", "left-out"]),
  reason: text,
});

/** What can be done about who may come in. */
const accessActs = [
  "member-admitted",
  "member-ended",
  "role-given",
  "places-granted",
  "places-revoked",
  "apiary-given",
  "apiary-taken",
  "invited",
  "invitation-cancelled",
  "signed-in",
  "signed-out",
  "session-ended",
  "password-changed",
  "passkey-added",
  "passkey-removed",
  "device-registered",
  "device-lost",
  "device-returned",
  "data-exported",
  "data-erased",
  "accounts-left-behind",
] as const;

/**
 * Who came in, or what was changed about who may. Written by the service alone; people are named by opaque ids, so that
 * a name can be erased. `about`: [programme].
 */
export const accessNoted = z.strictObject({
  act: z.enum(accessActs),
  /** The member who did it; null: someone at the machine itself. */
  by: id.nullable(),
  /** The member it was done to, when it is another. */
  member: id.optional(),
  role: text.optional(),
  device: device.optional(),
  apiary: id.optional(),
});
