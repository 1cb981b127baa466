/** What the absence of a stage of brood says about the days that have passed. */
import { recalled, seen } from "./cite.ts";
import { figure, span } from "./figure.ts";

const clock = recalled("brood clock, Apis mellifera");

/** Days without laying that the brood gives away, and the timing of a queen. */
export const broodClock = {
  noEggs: span([3, null], "days without laying", clock),
  noOpenLarvae: span([9, null], "days without laying", clock),
  onlySealedBrood: span([9, 21], "days without laying", clock),
  noWorkerBrood: span([21, null], "days without laying", clock),
  eggDays: figure(3, "days", clock),
  workerEmerges: figure(21, "days from egg", clock),
  droneEmerges: figure(24, "days from egg", clock),
  queenEmerges: figure(16, "days from egg", seen("queen-timing-notes", "pages")),
  queenLaysAfterEmergence: span([8, 21], "days", seen("queen-timing-notes", "8 at the fastest, 14–21 usual")),
  virginMayTakeAfterSwarm: figure(28, "days", recalled("handbooks")),
} as const;
