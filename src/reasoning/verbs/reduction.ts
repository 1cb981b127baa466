/** `reduction`: what a treatment took away against untreated colonies, by every form that the counts allow. */
import * as z from "zod";
import { answered, blocked, type Problem, type Result } from "../../units/index.ts";
import {
  abbott,
  apparentFall,
  efficacyProblem,
  hendersonTilton,
  type Share,
  schneiderOrelli,
  shareWithout,
  sunShepard,
} from "../efficacy/index.ts";
import { count, estimate, level } from "./fields.ts";
import { type Deep, verb } from "./verb.ts";

const look = (when: string) =>
  z.strictObject({
    found: count.describe(`Bees (or colonies) with mites, or mites counted, ${when}.`),
    of: z
      .number()
      .gt(0)
      .max(10_000_000)
      .exactOptional()
      .describe(
        "Bees (or colonies) looked at. For mites what they were counted on, such as bees washed; 1 when left out.",
      ),
  });

const looks = ["treatedBefore", "treatedAfter", "controlBefore", "controlAfter"] as const;
type LookName = (typeof looks)[number];

const input = z
  .strictObject({
    measure: z
      .enum(["infested", "mites"])
      .default("infested")
      .describe("What was counted: infested bees (or colonies) of those looked at, or mites."),
    treatedBefore: look("in the treated group before").exactOptional(),
    treatedAfter: look("in the treated group after"),
    controlBefore: look("in the untreated group before").exactOptional(),
    controlAfter: look("in the untreated group after")
      .exactOptional()
      .describe("Untreated colonies looked at on the same days. Without them there is no efficacy."),
    designEffect: z
      .number()
      .min(1)
      .max(1000)
      .exactOptional()
      .describe("Variance of the counts over that of bees, or mites, that fall alone. It has no default for mites."),
    level: level.default(0.95).describe("Probability content of each interval."),
  })
  .superRefine((given, context) => {
    const trouble = (name: LookName, field: "found" | "of", message: string) =>
      context.addIssue({ code: "custom", path: [name, field], message });
    for (const name of looks) {
      const each = given[name];
      if (each === undefined || given.measure === "mites") continue;
      if (each.of === undefined || !Number.isInteger(each.of))
        trouble(name, "of", "a whole number, where bees are counted");
      else if (each.found > each.of) trouble(name, "found", "no more than those looked at");
    }
    const before = given.treatedBefore !== undefined;
    if (given.controlAfter !== undefined && before !== (given.controlBefore !== undefined))
      trouble(before ? "controlBefore" : "treatedBefore", "found", "a look before in both groups or in neither");
    if (given.measure === "mites" && !before)
      trouble("treatedBefore", "found", "a look before, where mites are counted");
  });

const output = z.strictObject({
  measure: z.enum(["infested", "mites"]),
  reduction: estimate
    .nullable()
    .describe(
      "reduction against the untreated: Henderson and Tilton's with looks before, else Abbott's; null when refused",
    ),
  whyNone: z
    .enum(["no-comparator", "no-mites-before"])
    .nullable()
    .describe("why there is no reduction: nothing to compare with, or looks before that found none in one group"),
  others: z.array(estimate).describe("the same quantity by other forms and other limits"),
  withoutLimits: z
    .array(z.strictObject({ method: z.string(), value: z.number(), rule: z.string() }))
    .describe("older forms from percentages alone"),
  apparentFall: estimate
    .nullable()
    .describe("relative fall in the treated group alone: no efficacy, it may have fallen anyway"),
  designEffect: z.number().nullable().describe("as given; null for none"),
  rule: z.string(),
});

type Input = z.output<typeof input>;
type Look = NonNullable<Input[LookName]>;
type Answer = Deep<z.output<typeof output>>;

export const reduction = verb({
  name: "reduction",
  family: "comparison",
  summary: "What a treatment took away against untreated colonies, by every form.",
  assumptions: [
    "Without untreated colonies looked at on the same days, efficacy is refused: the infestation may have fallen anyway.",
    "Henderson and Tilton's form takes both groups to follow one course; Abbott's also that they started alike.",
    "Limits speak for the bees looked at, not for other colonies. Bees of one colony are alike: a design effect widens the limits.",
    "Dead mites stay in the tracheae: a look too early still counts them.",
  ],
  source:
    "Abbott 1925, J. Econ. Entomol. 18:265; Henderson & Tilton 1955, J. Econ. Entomol. 48:157; Sun & Shepard 1947, J. Econ. Entomol. 40:710; Schneider-Orelli 1947; limits by Katz et al. 1978 and Koopman 1984.",
  example: {
    treatedBefore: { found: 30, of: 100 },
    treatedAfter: { found: 4, of: 100 },
    controlBefore: { found: 28, of: 100 },
    controlAfter: { found: 35, of: 100 },
  },
  input,
  output,
  refusals: ["no-comparator"],
  run,
});

function run(given: Input): Result<Answer> {
  const { measure, treatedBefore, treatedAfter, controlAfter, designEffect, level } = given;
  const fall =
    measure === "infested" && treatedBefore !== undefined
      ? apparentFall(
          { before: share(treatedBefore), after: share(treatedAfter), designEffect: designEffect ?? 1 },
          level,
        )
      : null;
  const shown = { measure, apparentFall: fall?.ok ? fall.value : null, designEffect: designEffect ?? null };
  if (controlAfter === undefined) {
    const problems = [efficacyProblem("no-comparator", "unknown", "controlAfter", {})];
    return answered({ ...shown, reduction: null, whyNone: "no-comparator", ...nothing }, problems);
  }
  const forms = formsOf(given, controlAfter);
  const found = forms.flatMap((each) => (each.ok ? [each.value] : []));
  const problems = once(forms.flatMap((each) => each.problems.map((one) => named(one, each.ok))));
  const [first, ...others] = found;
  // Looks before that cannot be used contradict forms that take both groups to have started alike.
  if (problems.some(({ code, field }) => code === "efficacy-undefined" && field?.includes("Before")))
    return answered({ ...shown, reduction: null, whyNone: "no-mites-before", ...nothing }, problems);
  if (first === undefined) return blocked(...problems);
  return answered(
    {
      ...shown,
      reduction: first,
      whyNone: null,
      others,
      withoutLimits: olderForms(given, controlAfter),
      rule: first.rule,
    },
    problems,
  );
}

const nothing = { others: [], withoutLimits: [], rule: "EF5" };

/** Every form with limits that these counts allow, the one that uses most of them first. */
function formsOf(given: Input, controlAfter: Look) {
  const { measure, treatedBefore, treatedAfter, controlBefore, designEffect, level } = given;
  const both = treatedBefore !== undefined && controlBefore !== undefined;
  if (measure === "mites") {
    if (!both) return [];
    const treated = { before: mites(treatedBefore), after: mites(treatedAfter) };
    const control = { before: mites(controlBefore), after: mites(controlAfter) };
    const spread = designEffect === undefined ? {} : { overdispersion: designEffect };
    return [hendersonTilton({ kind: "counts", treated, control, level, ...spread })];
  }
  const factor = designEffect ?? 1;
  const after = { treated: share(treatedAfter), control: share(controlAfter), level, designEffect: factor };
  const change = both
    ? [
        hendersonTilton({
          kind: "shares",
          treated: { before: share(treatedBefore), after: share(treatedAfter) },
          control: { before: share(controlBefore), after: share(controlAfter) },
          level,
          designEffect: factor,
        }),
      ]
    : [];
  const [katz, koopman] = [abbott(after), abbott({ ...after, method: "koopman" })];
  const same = katz.ok && koopman.ok && katz.value.method === koopman.value.method;
  return same ? [...change, koopman] : [...change, katz, koopman];
}

/** Schneider-Orelli's and Sun and Shepard's forms, where the percentages that they take exist. */
function olderForms(given: Input, controlAfter: Look): Answer["withoutLimits"] {
  const { measure, treatedBefore, treatedAfter, controlBefore } = given;
  const dead =
    measure === "infested"
      ? schneiderOrelli({
          treatedDead: shareWithout(share(treatedAfter)),
          controlDead: shareWithout(share(controlAfter)),
        })
      : null;
  const courses = [
    [treatedBefore, treatedAfter],
    [controlBefore, controlAfter],
  ].map(([before, after]) => (before && after && before.found > 0 ? rate(after) / rate(before) : null));
  const [treated = null, control = null] = courses;
  // The form takes a share that died: with more after than before there is none.
  const changed =
    treated !== null && control !== null && treated <= 1
      ? sunShepard({ treatedDead: 1 - treated, controlChange: control - 1 })
      : null;
  return [
    ...(dead?.ok ? [{ method: "schneider-orelli", value: dead.value, rule: "EF9" }] : []),
    ...(changed?.ok ? [{ method: "sun-shepard", value: changed.value, rule: "EF9" }] : []),
  ];
}

const share = ({ found, of = found }: Look): Share => ({ infested: found, examined: of });
const mites = ({ found, of = 1 }: Look) => ({ mites: found, effort: of });
const rate = ({ found, of = 1 }: Look): number => found / of;

const names: Readonly<Record<string, LookName>> = {
  treated: "treatedAfter",
  control: "controlAfter",
  "treated.before": "treatedBefore",
  "treated.after": "treatedAfter",
  "control.before": "controlBefore",
  "control.after": "controlAfter",
};

/** A problem by the names of the question; what one form refuses stands in no other's way. */
function named(each: Problem, isAnswered: boolean): Problem {
  const name = names[each.field ?? ""];
  const field = each.field === "overdispersion" ? "designEffect" : name ? `${name}.found` : each.field;
  return { ...each, field, severity: isAnswered ? each.severity : "unknown" };
}

/** The same trouble of several forms is told once. */
const once = (problems: readonly Problem[]): readonly Problem[] =>
  problems.filter((each, index) => problems.findIndex(({ code }) => code === each.code) === index);
