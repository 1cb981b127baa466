/** Bodies of the entries about the journal itself: withdrawals, erasures, noted heads. */
import * as z from "zod";
import { id, longText } from "./parts.ts";

/** Takes back the entries in `replaces`; nothing stands in their place. `about`: as the withdrawn entry. */
export const entryWithdrawn = z.strictObject({ reason: longText });

/** The bodies named here are erased on every device at its next exchange, for good. `about`: as the erased entries, all of one root. */
export const contentErased = z.strictObject({ entries: z.array(id).min(1), reason: longText });

/** All heads of a day, to stand on reports. `about`: [programme]. */
export const headsNoted = z.strictObject({
  heads: z.array(
    z.strictObject({
      device: z.string().min(1).max(200),
      seq: z.number().int().min(1),
      hash: z.string().regex(/^[0-9a-f]{64}$/),
    }),
  ),
});
