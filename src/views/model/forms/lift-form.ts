/**
 * What was typed when a stop was lifted, and the entry it becomes.
 *
 * @module views/model
 */
import type { CaseState } from "../../../casebook/index.ts";
import type { BodyOf, EntryDraft } from "../../../journal/index.ts";
import type { Day, Result } from "../../../units/index.ts";
import type { StopNotice } from "../done/stops.ts";
import { type Fields, readForm } from "../form.ts";
import { happenedOn } from "../happened.ts";

/** Roles that can lift a stop. */
export const liftingRoles = ["competent-authority", "reference-laboratory", "apiary-inspector"] as const;

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
  return form.result({
    stop,
    role: form.oneOf("role", liftingRoles),
    liftedBy: form.text("liftedBy"),
    laboratoryReference: form.text("laboratoryReference"),
    on: happenedOn(form, "liftedOn", today),
    answers: [...(stops.find(({ key }) => key === stop)?.answers ?? [])],
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
