/**
 * What a programme's closed cases say: who teaches, each value beside its start, how well answers did, how signs drift.
 *
 * @module views/model
 */
import { type Casebook, settled } from "../../../casebook/index.ts";
import type { Seen, ValueInUse } from "../../../knowledge/index.ts";
import { experience } from "../../../reasoning/index.ts";
import type { Problem } from "../../../units/index.ts";
import { closedCases, inUseOf } from "../closed-cases.ts";

/** A value that own cases bear on: as published, as the programme has it before its cases, what they showed, in use. */
export interface TaughtValue {
  readonly kind: "frequency" | "healthy-rate" | "prior";
  /** Condition of a frequency or prior; season of a healthy rate. */
  readonly of: string;
  /** Finding of a frequency or healthy rate; season of a prior. */
  readonly by: string;
  readonly published: number | null;
  readonly start: number;
  readonly inUse: number;
  readonly present: number;
  readonly looked: number;
}

export interface ExperienceTold {
  readonly closed: number;
  readonly inUse: experience.InUse;
  readonly values: readonly TaughtValue[];
  readonly score: experience.CasebookScore;
  readonly drift: readonly experience.Drift[];
  /** What stands on the label of each case, by its id. */
  readonly codes: Readonly<Record<string, string>>;
  /** What else is to be told: changes left out, caveats. */
  readonly problems: readonly Problem[];
}

/** Everything about the experience of a casebook. Asks every closed case anew: not for the page's own thread. */
export function experienceTold(casebook: Casebook): ExperienceTold {
  const cases = closedCases(casebook);
  const inUse = inUseOf(casebook);
  return {
    closed: cases.length,
    inUse,
    values: taughtValues(inUse),
    score: experience.scoreOf(cases, inUse),
    drift: experience.driftOfSigns(cases, inUse.start),
    codes: codesOf(casebook),
    problems: inUse.problems.filter((each) => !inUse.experience.refused.includes(each)),
  };
}

/** What stands on the label of each case. */
export const codesOf = (casebook: Casebook): Readonly<Record<string, string>> =>
  Object.fromEntries(Object.values(casebook.cases).map((state) => [state.id, settled(state.record)?.code ?? state.id]));

/** A problem that names a case by its id, naming it by what stands on its label. */
export const withCode = (trouble: Problem, codes: ExperienceTold["codes"]): Problem => {
  const code = codes[String(trouble.slots.case)];
  return code === undefined ? trouble : { ...trouble, slots: { ...trouble.slots, case: code } };
};

/** Each value that own cases bear on, those with most cases first. */
export function taughtValues({ start, evidence, experience: { counts } }: experience.InUse): readonly TaughtValue[] {
  const season = (id: string) => id as keyof typeof start.healthy;
  return [
    ...taught("frequency", counts.frequencies, (of, by) => [
      start.frequencies[of]?.[by],
      evidence.frequencies[of]?.[by],
    ]),
    ...taught("healthy-rate", counts.healthy, (of, by) => [
      start.healthy[season(of)][by],
      evidence.healthy[season(of)][by],
    ]),
    ...taught("prior", counts.priors, (of, by) => [start.priors[of]?.[season(by)], evidence.priors[of]?.[season(by)]]),
  ].sort((one, other) => other.looked - one.looked);
}

type Counted = Readonly<Record<string, Readonly<Partial<Record<string, Seen>>>>>;
type StartAndNow = readonly [ValueInUse | undefined, ValueInUse | undefined];

const taught = (
  kind: TaughtValue["kind"],
  counts: Counted,
  at: (of: string, by: string) => StartAndNow,
): readonly TaughtValue[] =>
  Object.entries(counts).flatMap(([of, members]) =>
    Object.entries(members).flatMap(([by, seen]) => {
      const [before, now] = at(of, by);
      return before && now && seen
        ? [{ kind, of, by, published: before.published, start: before.value, inUse: now.value, ...seen }]
        : [];
    }),
  );
