/** `season-choices`: what to do about a colony, compared on the same draws: forecasts, differences, what a further count is worth. */
import * as z from "zod";
import type { Result } from "../../units/index.ts";
import { type Choices, type ChoicesQuestion, compareChoices, noAction, type Telling } from "../dynamics/index.ts";
import { day, openShare } from "./fields.ts";
import { seasonRange } from "./season.ts";
import { seasonAction, seasonInput } from "./season-fields.ts";
import { type Reply, verb } from "./verb.ts";

const input = z.strictObject({
  ...seasonInput,
  actions: z.array(seasonAction).max(20).default([]).describe("What is done whatever is chosen, and was before."),
  choices: z
    .array(z.strictObject({ name: z.string().trim().min(1).max(80), actions: z.array(seasonAction).min(1).max(20) }))
    .min(1)
    .max(12)
    .describe(
      `What to choose from, in the order in which one would rather do it; doing none of it (“${noAction}”) is always compared.`,
    ),
  decideOn: day
    .exactOptional()
    .describe(
      "Day of the choice: no count after it, no choice acts before it. Left out: day of the last count or size.",
    ),
  dates: z.array(day).max(30).default([]).describe("Days to tell beside the last one."),
  line: z
    .number()
    .min(0)
    .max(1)
    .exactOptional()
    .describe("Largest share of infested bees at the end that is good enough. Left out: nothing is said of settling."),
  sure: openShare.default(0.9).describe("Share of decisions that shall stand."),
  moreBees: z.number().int().min(1).max(1000).default(50).describe("Bees of a further count."),
});

const { range, survival } = seasonRange;
const difference = z.strictObject({
  ...range,
  mean: z.number(),
  better: z.number().describe("share of the draws in which the choice is better"),
  alike: z.number().describe("share of the draws in which it makes no difference"),
});
const seen = z.strictObject({
  ...{ date: z.string(), bees: z.strictObject(range), infestedShare: z.strictObject(range), survival },
});

const output = z.strictObject({
  decideOn: z.string(),
  choices: z
    .array(
      z.strictObject({
        name: z.string(),
        at: z.array(seen).describe("the days asked for and the last one; ranges of survival are widened as in season"),
        difference: z
          .array(
            z.strictObject({ date: z.string(), infestedShare: difference, bees: difference, survival: difference }),
          )
          .nullable()
          .describe(
            "of the choice less that of doing nothing, draw by draw, that of survival not widened; null for doing nothing itself",
          ),
        moreBees: z
          .strictObject({
            ...{ widthNow: z.number(), widthAfter: z.number() },
            ...{ deviationNow: z.number(), deviationAfter: z.number(), effectiveShare: z.number() },
          })
          .describe(
            "width of the 90 % range of the infested share at the end, now and in the mean after a further count on the day of the choice; standard deviation; share of the draws left worth",
          ),
      }),
    )
    .describe("doing nothing first"),
  counts: z.array(seasonRange.countTaken),
  settling: z
    .strictObject({
      ...{ line: z.number(), sure: z.number(), bees: z.number() },
      best: z
        .array(z.strictObject({ name: z.string(), chance: z.number() }))
        .describe("share of the draws in which each is the first that is good enough, or ends lowest"),
      alike: z.array(z.string()).describe("choices whose end the draws cannot tell from that of the likeliest"),
      isSettled: z.boolean().describe("one of them is best in as many draws as shall stand, without a further count"),
      days: z
        .array(z.strictObject({ date: z.string(), held: z.number(), isInTime: z.boolean() }))
        .describe(
          "by the day of a further count: share of decisions after it that perfect later knowledge would not reverse; whether no choice has begun by then",
        ),
      earliest: z.string().nullable().describe("first day on which that share is as large as asked"),
    })
    .nullable(),
  learnt: z
    .strictObject({ contactBefore: z.number(), contactAfter: z.number() })
    .describe("standard deviation of ln of the contact rate before and after the counts: what they taught of it"),
});

export const seasonChoices = verb({
  name: "season-choices",
  family: "case",
  summary: "Choices for a colony compared on the same draws, and what would settle them.",
  assumptions: [
    "As season: a model tuned by hand and not tried in the field, with the doubts that it names.",
    "The strength of each action is that of one published trial and is not doubted in the draws: ranges with an action are too narrow.",
    "A difference is the action's alone: every choice meets the same colonies and the same chance.",
    "A choice is best in a draw when it is the first in the list that ends at or below the line, else the first that ends within half a bee in 100 of the lowest; own definition.",
    "Uniting adds the other colony's bees, mites and brood; its queen is taken away, a tenth of its bees is lost (judgement), fighting over queens and robbing are left out.",
    "A further count is of a colony to which nothing was done, read with the same errors as the others.",
  ],
  source:
    "Own daily model (docs/methods/season.md); common random numbers; expected value of a count by the weights of the particles, own.",
  example: {
    site: { monthlyMeanCelsius: [-3.8, -2.9, 1.6, 7.7, 13.9, 18.8, 21.8, 21, 16.4, 10.2, 4.1, -1.2], latitude: 45 },
    start: { date: "2026-08-01", bees: 30000, infestedShare: 0.08 },
    counts: [{ date: "2026-08-20", infested: 6, examined: 50 }],
    decideOn: "2026-08-25",
    choices: [
      { name: "patty", actions: [{ kind: "oil-patty", from: "2026-09-01", to: "2026-11-15" }] },
      { name: "menthol", actions: [{ kind: "menthol", from: "2026-09-01" }] },
      {
        name: "uniting",
        actions: [
          {
            kind: "unite",
            from: "2026-09-05",
            donor: { start: { date: "2026-08-25", bees: 12000, infestedShare: 0.03 } },
          },
        ],
      },
    ],
    line: 0.15,
    until: "2027-03-01",
    draws: 200,
  },
  input,
  output,
  run: (asked, progress) => told(compareChoices(questionOf(asked), telling, { progress })),
});

const telling: Telling = { every: null };

const questionOf = ({ countError, ...asked }: z.output<typeof input>): ChoicesQuestion => ({
  ...asked,
  ...(countError === undefined ? {} : { error: countError }),
});

function told(compared: Result<Choices>) {
  if (!compared.ok) return compared;
  const { decideOn, choices, counts, settling, learnt } = compared.value;
  const own = choices.map(({ name, at, difference, moreBees }) => ({ name, at, difference, moreBees }));
  return { ...compared, value: { decideOn, choices: own, counts, settling, learnt } };
}

/** Asks `season-choices` with the comparison made elsewhere; null when it was stopped. */
export const askSeasonChoices = (
  raw: unknown,
  compare: (question: ChoicesQuestion, telling: Telling) => Promise<Result<Choices> | null>,
): Promise<Reply | null> =>
  seasonChoices.askThrough(raw, async (asked) => {
    const compared = await compare(questionOf(asked as z.output<typeof input>), telling);
    return compared === null ? null : told(compared);
  });
