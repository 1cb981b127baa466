/** `efficacy`: what a treatment did, against untreated colonies or not at all. */
import * as z from "zod";
import { answered, blocked, type Estimate, type Problem, problem, type Result } from "../../units/index.ts";
import { abbott, hendersonTilton, type Share, treatmentOutcome } from "../efficacy/index.ts";
import { count, estimate as estimateShape, level } from "./fields.ts";
import { type Deep, verb } from "./verb.ts";

const look = z
  .strictObject({
    infested: count.exactOptional().describe("Bees (or colonies) with mites."),
    examined: count.exactOptional().describe("Bees (or colonies) that count."),
    mites: count.exactOptional().describe("Mites counted, in place of infested and examined."),
    effort: z
      .number()
      .gt(0)
      .exactOptional()
      .describe("What the mites were counted on, such as bees washed; 1 when left out."),
  })
  .refine(
    ({ infested, examined, mites, effort }) =>
      mites === undefined
        ? infested !== undefined && examined !== undefined && effort === undefined
        : infested === undefined && examined === undefined,
    { message: "infested and examined, or mites" },
  )
  .refine(({ infested = 0, examined = infested }) => infested <= examined, {
    message: "no more than examined",
    path: ["infested"],
  });

const group = z.strictObject({
  before: look.exactOptional().describe("The look before the treatment, when there was one."),
  after: look.describe("The look after the treatment."),
});

type Look = z.output<typeof look>;
type Group = z.output<typeof group>;

const input = z
  .strictObject({
    treated: group,
    control: group
      .nullable()
      .default(null)
      .describe(
        "Untreated colonies looked at on the same days. Without them there is no efficacy, only before and after.",
      ),
    scored: z
      .enum(["any-mite", "living-mites"])
      .exactOptional()
      .describe("What counted as infested after the treatment: dead mites stay in the tracheae. Needed for bees."),
    daysAfter: z
      .number()
      .min(0)
      .exactOptional()
      .describe("Days from the end of treatment to the look after it. Needed for bees."),
    overdispersion: z
      .number()
      .gt(0)
      .exactOptional()
      .describe("Variance of mite counts over their mean; 1 is Poisson. It has no default."),
    level: level.default(0.95).describe("Probability content of the interval."),
  })
  .refine(({ treated, control }) => new Set(looksOf(treated, control).map(isCount)).size === 1, {
    message: "looks of one kind: all infested and examined, or all mites",
    path: ["control"],
  })
  .refine(
    ({ treated, control }) => control === null || (treated.before === undefined) === (control.before === undefined),
    {
      message: "before in both groups or in neither",
      path: ["control", "before"],
    },
  )
  .refine(({ treated, scored }) => isCount(treated.after) || scored !== undefined, {
    message: "any-mite or living-mites",
    path: ["scored"],
  })
  .refine(({ treated, daysAfter }) => isCount(treated.after) || daysAfter !== undefined, {
    message: "days from the end of treatment to the look after it",
    path: ["daysAfter"],
  })
  .refine(({ treated }) => !isCount(treated.after) || treated.before !== undefined, {
    message: "a look before, where mites are counted",
    path: ["treated", "before"],
  });

const isCount = ({ mites }: Look): boolean => mites !== undefined;
const looksOf = (...groups: readonly (Group | null)[]): readonly Look[] =>
  groups.flatMap((each) => (each ? [...(each.before ? [each.before] : []), each.after] : []));

const output = z.strictObject({
  efficacy: estimateShape.nullable().describe("reduction against the untreated; null when it is refused or undefined"),
  otherMethods: z.array(estimateShape).describe("the same quantity by other methods, to see whether they agree"),
  apparentFall: estimateShape
    .nullable()
    .describe("relative fall in the treated group alone: no efficacy, it may have fallen anyway"),
  expectedWithout: z.number().nullable().describe("share infested expected by now without treatment"),
  fallNotByTreatment: z.number().nullable().describe("part of the fall that the untreated group's course explains"),
  scored: z.enum(["any-mite", "living-mites"]).nullable(),
  daysAfter: z.number().nullable(),
});

type Input = z.output<typeof input>;
type Answer = Deep<z.output<typeof output>>;

export const efficacy = verb({
  name: "efficacy",
  family: "case",
  summary: "What a treatment did, against untreated colonies or not at all.",
  assumptions: [
    "Without untreated colonies looked at on the same days, efficacy is refused: the infestation may have fallen anyway.",
    "Limits speak for the bees examined, not for other colonies.",
    "Dead mites stay in the tracheae: what was scored, and when, is part of the result.",
  ],
  source:
    "Abbott 1925, J. Econ. Entomol. 18:265; Henderson & Tilton 1955, J. Econ. Entomol. 48:157; Katz et al. 1978 and Koopman 1984 (limits).",
  example: {
    treated: { before: { infested: 20, examined: 50 }, after: { infested: 5, examined: 50 } },
    control: { before: { infested: 18, examined: 50 }, after: { infested: 16, examined: 50 } },
    scored: "living-mites",
    daysAfter: 28,
  },
  input,
  output,
  refusals: ["no-comparator"],
  run,
});

function run(given: Input): Result<Answer> {
  if (isCount(given.treated.after)) return ofCounts(given);
  return given.treated.before === undefined ? afterOnly(given) : beforeAndAfter(given);
}

const nothing = {
  efficacy: null,
  otherMethods: [],
  apparentFall: null,
  expectedWithout: null,
  fallNotByTreatment: null,
};
const scoring = ({ scored, daysAfter }: Input) => ({ scored: scored ?? null, daysAfter: daysAfter ?? null });

const share = ({ infested = 0, examined = 0 }: Look): Share => ({ infested, examined });
const shares = ({ before, after }: Group) => ({ before: share(before ?? after), after: share(after) });
const mites = ({ mites: counted = 0, effort = 1 }: Look) => ({ mites: counted, effort });

function beforeAndAfter(given: Input): Result<Answer> {
  const { treated, control, level: wanted, scored = "any-mite", daysAfter = 0 } = given;
  const groups = { treated: shares(treated), control: control ? shares(control) : null };
  const outcome = treatmentOutcome({ ...groups, scored, daysAfter, level: wanted });
  if (!outcome.ok) return outcome;
  const other = control
    ? abbott({ treated: share(treated.after), control: share(control.after), level: wanted })
    : null;
  return answered({ ...outcome.value, otherMethods: known(other), ...scoring(given) }, outcome.problems);
}

/** Abbott's form; Koopman's limits stand beside Katz's, which are poor when few are left. */
function afterOnly(given: Input): Result<Answer> {
  const { treated, control, level: wanted } = given;
  const trial = { treated: share(treated.after), control: control ? share(control.after) : null, level: wanted };
  return withEfficacy(abbott(trial), known(abbott({ ...trial, method: "koopman" })), given, livingNote(given));
}

function ofCounts(given: Input): Result<Answer> {
  const { treated, control, overdispersion, level: wanted } = given;
  const looks = (each: Group) => ({ before: mites(each.before ?? each.after), after: mites(each.after) });
  const found = hendersonTilton({
    kind: "counts",
    treated: looks(treated),
    control: control ? looks(control) : null,
    level: wanted,
    ...(overdispersion === undefined ? {} : { overdispersion }),
  });
  return withEfficacy(found, [], given, []);
}

function withEfficacy(
  found: Result<Estimate>,
  otherMethods: readonly Estimate[],
  given: Input,
  notes: readonly Problem[],
): Result<Answer> {
  if (!found.ok) return blocked(...found.problems);
  return answered({ ...nothing, efficacy: found.value, otherMethods, ...scoring(given) }, [
    ...found.problems,
    ...notes,
  ]);
}

const livingNote = ({ scored, daysAfter = 0 }: Input): readonly Problem[] =>
  scored === "any-mite" ? [problem("dead-mites-still-counted", "warned", "scored", { slots: { daysAfter } })] : [];

const known = (result: Result<Estimate> | null): readonly Estimate[] => (result?.ok ? [result.value] : []);
