/** `allocate`: the cheapest numbers to test in groups of different risk, so that the round is sensitive enough. */
import * as z from "zod";
import { answered } from "../../units/index.ts";
import { allocateByRisk } from "../surveillance/index.ts";
import { count, level } from "./fields.ts";
import { stratumFields } from "./freedom-tree.ts";
import { verb } from "./verb.ts";

const input = z.strictObject({
  designPrevalence: z.number().min(1e-5).max(1).describe("Share infested over all groups that must not be missed."),
  sensitivity: z.number().min(0.01).max(1).describe("Chance that an infested one is found. It has no default."),
  target: level.default(0.95).describe("Wanted chance to find at least one if so many are infested."),
  strata: z
    .array(
      z.strictObject({
        ...stratumFields,
        cost: z.number().min(0.01).max(1e6).default(1).describe("cost of testing one, in any money"),
        cap: count.exactOptional().describe("how many there are to test; left out: as many as wanted"),
      }),
    )
    .min(1)
    .max(10)
    .describe("One for each group of risk: relative risk, share of all, cost of testing one, how many there are."),
});

const output = z.strictObject({
  units: z.number().int().describe("to test in all groups"),
  cost: z.number(),
  sensitivity: z.number().describe("chance that the round finds at least one; the target or above"),
  representativeUnits: z
    .number()
    .int()
    .describe("that a sample over all groups by their shares would need for the same"),
  groups: z.array(
    z.strictObject({
      stratum: z.number().int(),
      relativeRisk: z.number(),
      share: z.number(),
      adjustedRisk: z.number().describe("relative to the average of all"),
      units: z.number().int().describe("to test"),
      representative: z.number().describe("of the representative sample, on average"),
      cost: z.number(),
    }),
  ),
  method: z.string(),
  rule: z.string(),
});

export const allocate = verb({
  name: "allocate",
  family: "freedom",
  summary: "The cheapest numbers to test in groups of different risk.",
  assumptions: [
    "Those tested are drawn at random within each group and are independent given the state of the region.",
    "A test never finds what is not there.",
    "Relative risks are judged or known from elsewhere; where they are wrong, so is the allocation.",
    "Caps only bound how many can be tested; drawing without putting back is not counted.",
  ],
  source: "Martin, Cameron & Greiner 2007, Preventive Veterinary Medicine 79:71–97 (model); exact search: own.",
  example: {
    designPrevalence: 0.1,
    sensitivity: 0.9,
    strata: [
      { relativeRisk: 5, share: 0.1, cost: 1, cap: 4 },
      { relativeRisk: 3, share: 0.1, cost: 1, cap: 6 },
      { relativeRisk: 1, share: 0.8, cost: 1, cap: 500 },
    ],
  },
  input,
  output,
  refusals: ["target-out-of-reach"],
  run: ({ strata, ...design }) => {
    const found = allocateByRisk({ ...design, strata });
    if (!found.ok) return found;
    const { risks, units, cost, sensitivity, representativeUnits } = found.value;
    return answered({
      units: units.reduce((sum, each) => sum + each, 0),
      cost,
      sensitivity,
      representativeUnits,
      groups: strata.map(({ relativeRisk, share, cost: each }, index) => ({
        stratum: index + 1,
        relativeRisk,
        share,
        adjustedRisk: risks[index] ?? 0,
        units: units[index] ?? 0,
        representative: share * representativeUnits,
        cost: each * (units[index] ?? 0),
      })),
      method: "branch-and-bound",
      rule: "SV159",
    });
  },
});
