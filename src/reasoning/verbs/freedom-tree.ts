/** `freedom-tree`: what one round over groups of different risk would have found: a scenario tree. */
import * as z from "zod";
import { answered } from "../../units/index.ts";
import { scenarioTree } from "../surveillance/index.ts";
import { count, positiveShare } from "./fields.ts";
import { verb } from "./verb.ts";

const mostClusters = 100_000;

/** A group of apiaries (or colonies) of one risk. */
export const stratumFields = {
  relativeRisk: z.number().gt(0).max(1e6).describe("risk of being infested, relative to the other groups"),
  share: positiveShare.describe("share of all that lie in this group; all shares make 1"),
};

const input = z
  .strictObject({
    clusterPrevalence: positiveShare.describe("Design prevalence: share of apiaries infested if the region is."),
    unitPrevalence: positiveShare.describe("Share of colonies (or bees) infested within an infested apiary."),
    strata: z
      .array(z.strictObject(stratumFields))
      .min(1)
      .max(50)
      .describe("One for each group of risk: relative risk, share of all apiaries."),
    clusters: z
      .array(
        z.strictObject({
          stratum: count.min(1).max(50).describe("group, counted from 1"),
          count: count.max(mostClusters).describe("apiaries tested alike"),
          units: count.max(1_000_000).describe("colonies (or bees) tested in each; none found"),
          sensitivity: positiveShare.describe("chance that an infested one of them is found"),
        }),
      )
      .max(2000)
      .describe("What was tested: group, apiaries, colonies tested in each, sensitivity."),
  })
  .refine(({ clusters }) => clusters.reduce((sum, each) => sum + each.count, 0) <= mostClusters, {
    message: `no more than ${mostClusters} in all`,
    path: ["clusters"],
  })
  .refine(({ strata, clusters }) => clusters.every(({ stratum }) => stratum <= strata.length), {
    message: "groups that stand in the list of groups, counted from 1",
    path: ["clusters"],
  });

const output = z.strictObject({
  sensitivity: z.number().describe("chance that the round finds at least one if the region is infested"),
  groups: z.array(
    z.strictObject({
      stratum: z.number().int(),
      relativeRisk: z.number(),
      share: z.number(),
      adjustedRisk: z.number().describe("relative to the average of all apiaries"),
      infestedShare: z.number().describe("share of the group's apiaries infested if the region is"),
      tested: z.number().int(),
      sensitivity: z.number().describe("chance that this group's tests find at least one"),
    }),
  ),
  method: z.string(),
  rule: z.string(),
});

export const freedomTree = verb({
  name: "freedom-tree",
  family: "freedom",
  summary: "What one round over groups of different risk would have found.",
  assumptions: [
    "Many apiaries in each group, and those tested are a random draw of theirs.",
    "Apiaries, and colonies within them, are independent given the state of the region; where they are not, the figure is too high.",
    "A test never finds what is not there.",
    "Relative risks are judged or known from elsewhere.",
  ],
  source: "Martin, Cameron & Greiner 2007, Preventive Veterinary Medicine 79:71–97.",
  example: {
    clusterPrevalence: 0.02,
    unitPrevalence: 0.1,
    strata: [
      { relativeRisk: 4, share: 0.2 },
      { relativeRisk: 1, share: 0.8 },
    ],
    clusters: [
      { stratum: 1, count: 40, units: 30, sensitivity: 0.9 },
      { stratum: 2, count: 60, units: 30, sensitivity: 0.9 },
      { stratum: 2, count: 20, units: 10, sensitivity: 0.9 },
    ],
  },
  input,
  output,
  run: ({ strata, clusters, ...prevalences }) => {
    const each = clusters.flatMap(({ count: times, stratum, units, sensitivity }) =>
      Array.from({ length: times }, () => ({ stratum: stratum - 1, units, sensitivity })),
    );
    const found = scenarioTree({ ...prevalences, strata, clusters: each });
    if (!found.ok) return found;
    const { risks, infestedShares, byStratum, sensitivity } = found.value;
    return answered(
      {
        sensitivity,
        groups: strata.map((stratum, index) => ({
          stratum: index + 1,
          ...stratum,
          adjustedRisk: risks[index] ?? 0,
          infestedShare: infestedShares[index] ?? 0,
          tested: each.filter((one) => one.stratum === index).length,
          sensitivity: byStratum[index] ?? 0,
        })),
        method: "scenario-tree",
        rule: "SV156",
      },
      found.problems,
    );
  },
});
