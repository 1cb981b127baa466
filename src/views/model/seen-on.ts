/**
 * The day on which what is ticked next was seen, as it is typed beside the findings.
 *
 * @module views/model
 */
import type { Day, Result } from "../../units/index.ts";
import { readForm } from "./form.ts";
import { happenedOn } from "./happened.ts";

/** The day typed; today when nothing is. A day to come, or years back, is refused. */
export function readSeenOn(typed: string, today: Day): Result<Day> {
  const form = readForm({ seenOn: typed });
  return form.result(happenedOn(form, "seenOn", today));
}
