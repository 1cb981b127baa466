/**
 * Days typed beside the findings: when what is ticked next was seen, and when a colony died.
 *
 * @module views/model
 */
import { answered, type Day, isDay, problem, type Result } from "../../units/index.ts";
import { readForm } from "./form.ts";
import { happenedOn } from "./happened.ts";

/** The day typed; today when nothing is. A day to come, or years back, is refused. */
export function readSeenOn(typed: string, today: Day): Result<Day> {
  const form = readForm({ seenOn: typed });
  return form.result(happenedOn(form, "seenOn", today));
}

/** The day a colony died, as it is typed; none when nothing is. A day after it was seen dead, or years back, is refused. */
export function readDiedOn(
  typed: string,
  { today, seenDeadOn }: { readonly today: Day; readonly seenDeadOn: Day },
): Result<{ readonly diedOn?: Day }> {
  if (typed === "") return answered({});
  const form = readForm({ diedOn: typed });
  const diedOn = happenedOn(form, "diedOn", today);
  if (isDay(diedOn) && diedOn > seenDeadOn)
    form.complain(
      problem("died-after-seen-dead", "blocked", "diedOn", {
        given: diedOn,
        slots: { given: diedOn, seen: seenDeadOn },
      }),
    );
  return form.result({ diedOn });
}
