/** Why something could not be written down on this device, in words a person can act on. */
import { type Problem, problem } from "../units/index.ts";
import { StoreStopped } from "./device-contract.ts";

/** The problem of a recording that failed: nothing of it is kept. */
export function recordingTrouble(trouble: unknown): Problem {
  if (trouble instanceof StoreStopped) return trouble.problem;
  const { name = "", message = "" } = (trouble ?? {}) as Partial<Error>;
  // Browsers also say it as an abort whose words name the quota or the disk.
  const isFull = name === "QuotaExceededError" || /quota|no space|disk is full/i.test(message);
  if (isFull) return problem("device-full", "blocked", null);
  return problem("device-not-written", "blocked", null, { slots: { reason: name || "unknown" } });
}
