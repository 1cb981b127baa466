/**
 * Reads how a programme reasons, as a person types it: shares of 100, ticks, a strength.
 *
 * @module views/model
 */
import { experienceUnused, type ReasoningSettings } from "../../../casebook/index.ts";
import type { BodyOf } from "../../../journal/index.ts";
import { differential } from "../../../reasoning/index.ts";
import { type Day, problem, type Result } from "../../../units/index.ts";
import { type Fields, present, readForm } from "../form.ts";

/** Body of `reasoning-set` from the fields; an empty field leaves that setting as the program has it. */
export function readSettings(fields: Fields, today: Day): Result<BodyOf<"reasoning-set">> {
  const form = readForm(fields);
  const share = (name: string) => {
    const of100 = form.maybeNumber(name, { min: 0.01, max: 99.99 });
    return of100 === undefined ? undefined : of100 / 100;
  };
  const thresholds = present({ leading: share("leading"), open: share("open") });
  const { leading = differential.defaultThresholds.leading, open = differential.defaultThresholds.open } = thresholds;
  if (open > leading) form.complain(problem("open-above-leading", "blocked", "open"));
  const ticked = (name: string) => form.maybeText(name) !== undefined;
  const experience = {
    frequencies: ticked("frequencies"),
    healthyRates: ticked("healthyRates"),
    priors: ticked("priors"),
    strength: form.maybeNumber("strength", { min: 0.1, max: 10 }) ?? experienceUnused.strength,
  };
  return form.result(
    present({
      on: today,
      thresholds: Object.keys(thresholds).length === 0 ? undefined : thresholds,
      nothingWrong: share("nothingWrong"),
      experience,
      reason: form.maybeText("reason"),
    }),
  );
}

/** The settings that an entry of this body makes: what a trial takes. */
export const settingsFrom = ({
  thresholds = {},
  nothingWrong,
  experience,
}: BodyOf<"reasoning-set">): ReasoningSettings => ({
  thresholds: present(thresholds),
  nothingWrong: nothingWrong ?? null,
  experience: experience ?? experienceUnused,
});
