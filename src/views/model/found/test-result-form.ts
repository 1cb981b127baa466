/**
 * Reads a result of a test as a person types it.
 *
 * @module views/model
 */
import type { BodyOf } from "../../../journal/index.ts";
import { isTestId, testIds } from "../../../knowledge/index.ts";
import { bench, differential } from "../../../reasoning/index.ts";
import { blocked, type Day, type Problem, problem, type Result } from "../../../units/index.ts";
import { type Fields, type FormReader, present, readForm } from "../form.ts";
import { happenedOn } from "../happened.ts";
import { keepings, type MoreOfResult, moreOf, resultShape, tickOf } from "./other-tests.ts";

/** Body of `test-result-recorded` from the form. */
export function readTestResult(fields: Fields, today: Day): Result<BodyOf<"test-result-recorded">> {
  const form = readForm(fields);
  const test = form.oneOf("test", testIds);
  const shape = resultShape(test);
  const count = (name: string, min = 0) => form.number(name, { min, max: 100_000, whole: true });
  const data = present({
    colony: fields.colony ? fields.colony : null,
    test,
    on: happenedOn(form, "on", today),
    laboratory: form.maybeText("laboratory"),
    takenFrom: fields.takenFrom ? form.oneOf("takenFrom", ["S", "E", "B", "F", "D"]) : undefined,
    aliveWhenTaken: yesOrNo(fields.aliveWhenTaken),
    note: form.maybeText("note"),
    ...(shape === "share" ? { positive: count("positive"), examined: count("examined", 1) } : {}),
    ...(shape === "mites" ? { mites: count("mites"), bees: count("bees", 1) } : {}),
    ...(shape === "spores"
      ? { sporesMillionsPerBee: form.number("spores", { min: 0, max: differential.mostSporesMillions }) }
      : {}),
    ...(shape === "found-or-not" ? { result: form.oneOf("result", ["found", "none-found", "unclear"]) } : {}),
    kept: fields.kept ? form.oneOf("kept", keepings) : undefined,
    ...readMore(form, fields, { test, ...moreOf(test) }),
  });
  const result = form.result(data);
  if (!result.ok) return result;
  if (shape === "share") {
    const share = bench.prevalence({ positive: data.positive ?? 0, examined: data.examined ?? 0 });
    if (!share.ok) return blocked(...share.problems);
  }
  const unfit = unfitField(data);
  return unfit === null ? result : blocked(unfit);
}

/** What keeps the result from being one at all, at the field that it is about. */
function unfitField({ test, positive, examined, mites, bees }: BodyOf<"test-result-recorded">): Problem | null {
  const counts = present({ positive, examined, mites, bees });
  if (!isTestId(test) || Object.keys(counts).length === 0) return null;
  const unfit = differential.unfitTest({ test, ...counts });
  if (unfit === null) return null;
  const field = unfit.field?.split(".").at(-1) ?? "test";
  return problem("field-unfit", "blocked", field, { slots: { expected: unfit.expected ?? "" } });
}

const yesOrNo = (typed: string | undefined): boolean | undefined =>
  typed === "yes" ? true : typed === "no" ? false : undefined;

function readMore(
  form: FormReader,
  fields: Fields,
  { test, which, asksSequenced, asksDose }: MoreOfResult & { readonly test: string },
) {
  const found = fields.result === "found";
  const ticked = which.filter((id) => fields[tickOf(id)] !== undefined);
  // What was found cannot stand beside "none found": it is not dropped in silence.
  if (!found && ticked.length > 0)
    form.complain(problem("which-without-find", "blocked", "which", { given: ticked.join(", ") }));
  if (found && ticked.length === 0 && differential.needsWhich(test))
    form.complain(problem("find-without-which", "blocked", "which"));
  return present({
    which: found && ticked.length > 0 ? ticked : undefined,
    sequenced: asksSequenced ? yesOrNo(fields.sequenced) : undefined,
    harmfulDose: asksDose && found ? yesOrNo(fields.harmfulDose) : undefined,
    daysUntilFrozen: asksDose ? form.maybeNumber("daysUntilFrozen", { min: 0, max: 365 }) : undefined,
  });
}
