/**
 * What was typed when a stop was lifted, and the entry it becomes.
 *
 * @module views/model
 */
import type { CaseState } from "../../../casebook/index.ts";
import { type BodyOf, type EntryDraft, kinds } from "../../../journal/index.ts";
import { type Day, isDay, problem, type Result } from "../../../units/index.ts";
import type { StopLifted } from "../done/stop-acts.ts";
import type { StopNotice } from "../done/stops.ts";
import { type Fields, readForm } from "../form.ts";
import { happenedOn } from "../happened.ts";

/** Roles that can lift a stop, as the journal has them. */
export const liftingRoles = kinds["stop-lifted"].body.shape.role.options;

type Lifted = BodyOf<"stop-lifted">;

/** Reads the form; the stop is one of the case's own. The day is today unless said otherwise. */
export function readLifted(
  fields: Fields,
  { stops, today }: { readonly stops: readonly StopNotice[]; readonly today: Day },
): Result<Lifted> {
  const form = readForm(fields);
  const stop = form.oneOf(
    "stop",
    stops.map(({ key }) => key),
  );
  const lifted = stops.find(({ key }) => key === stop);
  const on = happenedOn(form, "liftedOn", today);
  if (lifted !== undefined && isDay(on) && on < lifted.since)
    form.complain(
      problem("lifted-before-seen", "blocked", "liftedOn", { given: on, slots: { given: on, seen: lifted.since } }),
    );
  return form.result({
    stop,
    role: form.oneOf("role", liftingRoles),
    liftedBy: form.text("liftedBy"),
    laboratoryReference: form.text("laboratoryReference"),
    on,
    answers: (lifted?.answers ?? []).map(({ entry }) => entry),
  });
}

/** The entry; it replaces an earlier lift of the same stop. */
export const liftedDraft = (state: CaseState, data: Lifted): EntryDraft => ({
  kind: "stop-lifted",
  at: data.on,
  about: [state.id, data.stop],
  replaces: state.stopsLifted[data.stop]?.candidates.map(({ entry }) => entry) ?? [],
  data,
});

/** Takes a lift back: the stop stands again. */
export const liftTakenBackDraft = (state: CaseState, { key, entries }: StopLifted, today: Day): EntryDraft => ({
  kind: "entry-withdrawn",
  at: today,
  about: [state.id, key],
  replaces: entries,
  data: { reason: "the lift of the stop is taken back" },
});
