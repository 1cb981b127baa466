/** Colonies to be united with the particles: each is held to its own counts first, and gives one draw to each particle. */
import { answered, type Problem, type Result } from "../../../units/index.ts";
import type { ReadyRun } from "../course.ts";
import type { ReadyUniting } from "../interventions/ready-uniting.ts";
import { donorCourse, inDonor } from "../interventions/uniting.ts";
import type { ForecastQuestion } from "./forecast.ts";
import { filterSteps } from "./forecast-steps.ts";
import type { Join } from "./pieces.ts";
import type { Cutting, Steps } from "./steps.ts";

/** Draws of other colonies, one for each particle. */
export interface Joining extends Join {
  readonly particles: number;
}

/** A number apart from the seeds of people, so that other colonies have chances of their own. Any odd one would do. */
const apart = 0x9e3779b1;
const seeds = 2 ** 53;

/**
 * The other colonies of a run from a morning on. Their chances hang on the seed and on which uniting of the list it is,
 * not on its day: the same colonies come when a day is moved, and when a choice unites before what is done anyway.
 */
export function* joiningSteps(
  question: ForecastQuestion,
  { unitings }: ReadyRun,
  { from, share }: { readonly from: number; readonly share: number },
  cutting: Cutting,
): Steps<Result<readonly Joining[]>> {
  const joinings: Joining[] = [];
  const problems: Problem[] = [];
  for (const uniting of unitings) {
    if (uniting.elapsed < from) continue;
    const { elapsed, kept, donor, field } = uniting;
    const filtered = yield* filterSteps(donorQuestion(question, uniting), cutting, [share, share]);
    const told = filtered.problems.flatMap((each) => inDonor(each, field) ?? []);
    if (!filtered.ok) return { ...filtered, problems: told };
    problems.push(...told);
    const { particles, states } = filtered.value.cloud;
    joinings.push({ morning: elapsed, states, layout: donor.model.layout, kept, particles });
  }
  return answered(joinings, problems);
}

function donorQuestion(question: ForecastQuestion, { action, rank }: ReadyUniting): ForecastQuestion {
  const { draws, seed, doubt, error, noise } = question;
  return {
    ...donorCourse(question, action),
    counts: action.donor.counts ?? [],
    draws,
    seed: (seed + apart * (rank + 1)) % seeds,
    ...(doubt === undefined ? {} : { doubt }),
    ...(error === undefined ? {} : { error }),
    ...(noise === undefined ? {} : { noise }),
  };
}

/** What of them meets the particles `first` to `after − 1` between two mornings. */
export const joinsFor = (
  joinings: readonly Joining[],
  [first, after]: readonly [number, number],
  [from, to]: readonly [number, number],
): readonly Join[] =>
  joinings
    .filter(({ morning }) => morning >= from && morning < to)
    .map(({ morning, states, layout, kept }) => ({
      ...{ morning, layout, kept },
      states: states.subarray(first * layout.length, after * layout.length),
    }));
