/** What is wrong with a question is told at its field, in the numbers that were typed there, never as a bare code. */
import { describe, expect, it } from "vitest";
import { verbNamed, verbs } from "../../../reasoning/index.ts";
import { sentenceOf, wholeWordsOf } from "../../words/index.ts";
import { fieldOfProblem, fieldTroubles, methodFields, methodViewOf, placesOf, questionOf } from "../index.ts";

const words = wholeWordsOf("en");

/** The sentences that the page of a method shows for what was typed, each with its field. */
function troubles(name: string, typed: Readonly<Record<string, string>>): readonly string[] {
  const [verb, view] = [verbNamed(name), methodViewOf(name)];
  if (!verb || !view) throw new Error(`no method ${name}`);
  const fields = methodFields(verb.inputShape, view.fields, verb.example);
  const all = Object.fromEntries(fields.map((field) => [field.name, typed[field.name] ?? field.typed]));
  const question = questionOf(all, verb.inputShape, view.fields);
  const problems = question.ok ? verb.ask(question.value).problems : question.problems;
  const told = fieldTroubles(problems, { fields, shape: verb.inputShape, words: view.fields });
  return told.map((each) => `${fieldOfProblem(each, fields)}: ${sentenceOf(each, words)}`);
}

describe("troubles of a question", () => {
  it.each([
    ["none-found", { examined: "0" }, "examined: 0 does not fit. Expected: a whole number"],
    ["none-found", { examined: "30.5" }, "examined: 30.5 does not fit. Expected: a whole number"],
    ["none-found", { examined: "" }, "examined: Nothing is entered here; it is needed."],
    ["intervals", { level: "100" }, "level: 100 does not fit. Expected: a number, 1 or more and below 100."],
    [
      "freedom",
      { sensitivities: "40 120" },
      "sensitivities: Number 2: 120 does not fit. Expected: a number from 0 to 100.",
    ],
    ["freedom-finite", { tested: "20 120" }, "tested: Line 1, sensitivity: 120 does not fit. Expected: a number"],
    ["pools", { groups: "3 of 40" }, "groups: Line 1"],
    ["intervals", { positive: "60", examined: "50" }, "positive: "],
  ] as const)("%s with %o", (name, typed, starts) => {
    expect(troubles(name, typed)[0]).toMatch(new RegExp(`^${starts.replaceAll(/[.;]/g, "\\$&")}`));
  });

  it.each(verbs.filter(({ family }) => family !== "case").map((verb) => [verb.name, verb] as const))(
    "%s tells nothing twice and no bare code, whatever is typed into any field",
    (name, verb) => {
      const bare = placesOf(verb.inputShape).flatMap((place) =>
        ["", "-5", "0", "30.5", "1e9", "x", "3 of 40", "1 2 3 4 5"].flatMap((typed) => {
          const said = troubles(name, { [place.name]: typed });
          const codes = said.filter((each) => /^\w+(?:\.\w+)?: [a-z]+(?:-[a-z]+)+$|undefined|NaN/.test(each));
          const twice = said.filter((each, index) => said.indexOf(each) !== index);
          return [...codes, ...twice].map((each) => `${typed} ${each}`);
        }),
      );
      expect(bare).toEqual([]);
    },
  );
});
