/** Checks test results, each by what its test counts. */
import { type TestId, testIds } from "../../knowledge/index.ts";
import { isDay, type Problem, problem } from "../../units/index.ts";
import type { TestInput } from "./input.ts";
import { mostMitesPerBee } from "./judgements.ts";
import { countedBees } from "./levels.ts";
import { weighedTests } from "./weighed-tests.ts";
import { unknownFields, words, wrong } from "./wrong-value.ts";

const results = ["found", "none-found", "unclear"] as const;
const bodies = ["S", "E", "B", "F", "D"] as const;
const fields = [
  "test",
  "positive",
  "examined",
  "unreadable",
  "mites",
  "bees",
  "recovery",
  "sporesMillionsPerBee",
  "result",
  "date",
  "takenFrom",
  "aliveWhenTaken",
  "daysSinceControl",
];

/** Tests as they were given. */
export interface ReadTests {
  /** Those that can be weighed; the others are noted as problems that do not block. */
  readonly tests: readonly TestInput[];
  /** Those that found what they look for, weighed or not. */
  readonly found: readonly TestId[];
}

/** The tests that can be weighed, and those that found something. */
export function readTests(given: unknown, problems: Problem[]): ReadTests {
  if (given === undefined) return { tests: [], found: [] };
  if (!Array.isArray(given)) {
    problems.push(wrong("tests", given, "a list of tests"));
    return { tests: [], found: [] };
  }
  const tests = (given as TestInput[]).filter((test, index) => isWeighed(test, `tests[${index}]`, problems));
  const found = (given as TestInput[]).flatMap((test) => (test?.result === "found" ? [test.test as TestId] : []));
  return { tests, found };
}

function isWeighed(test: TestInput, path: string, problems: Problem[]): boolean {
  if (typeof test !== "object" || test === null) {
    problems.push(wrong(path, test, "a test with its result"));
    return false;
  }
  problems.push(...unknownFields(test as unknown as Record<string, unknown>, fields, `${path}.`));
  if (!(testIds as readonly string[]).includes(test.test)) {
    problems.push(wrong(`${path}.test`, test.test, `one of ${words(testIds)}`));
    return false;
  }
  checkCircumstances(test, path, problems);
  const model = weighedTests[test.test as TestId];
  const whole = (field: "positive" | "examined" | "mites" | "bees", least: number) => {
    const value = test[field];
    const fine = Number.isInteger(value) && (value ?? -1) >= least;
    if (!fine) problems.push(wrong(`${path}.${field}`, value, `a whole number, ${least} or more`));
    return fine ? (value ?? null) : null;
  };
  /** Nothing could be read: no answer, and no reason to refuse the rest of the case. */
  const isEmpty = (count: "positive" | "mites", of: "examined" | "bees") => {
    if (test[count] !== 0 || test[of] !== 0) return false;
    problems.push(problem("test-unclear", "noted", `${path}.${of}`, { given: 0, slots: { test: test.test } }));
    return true;
  };
  switch (model?.model) {
    case undefined:
      problems.push(
        problem("test-not-weighed", "noted", `${path}.test`, { given: test.test, slots: { test: test.test } }),
      );
      return false;
    case "tracheal-count": {
      if (isEmpty("positive", "examined")) return false;
      const [positive, examined] = [whole("positive", 0), whole("examined", 1)];
      if (positive !== null && examined !== null && positive > examined) {
        problems.push(wrong(`${path}.positive`, positive, `at most the ${examined} bees examined`));
      }
      return true;
    }
    case "varroa-count": {
      if (isEmpty("mites", "bees")) return false;
      const [mites, bees] = [whole("mites", 0), whole("bees", 1)];
      const { recovery } = test;
      if (recovery !== undefined && !(recovery > 0 && recovery <= 1)) {
        problems.push(wrong(`${path}.recovery`, recovery, "above 0 and at most 1"));
      }
      if (mites !== null && bees !== null && mites > mostMitesPerBee * countedBees(test)) {
        const most = `at most ${mostMitesPerBee} mites a bee, corrected for what the wash leaves on them`;
        problems.push(wrong(`${path}.mites`, mites, most));
      }
      return true;
    }
    case "spores": {
      const spores = test.sporesMillionsPerBee;
      if (spores === undefined && test.result === "none-found") return true;
      if (spores !== undefined && spores > 0 && test.result === "none-found") {
        problems.push(wrong(`${path}.result`, test.result, `found, since ${spores} million spores a bee are given`));
      }
      if (!(typeof spores === "number" && Number.isFinite(spores) && spores >= 0)) {
        problems.push(wrong(`${path}.sporesMillionsPerBee`, spores, "millions of spores a bee, 0 or more"));
      }
      return true;
    }
    case "found":
      if (!results.includes(test.result as never)) problems.push(wrong(`${path}.result`, test.result, words(results)));
      if (test.result === "unclear") {
        problems.push(
          problem("test-unclear", "noted", `${path}.result`, { given: "unclear", slots: { test: test.test } }),
        );
        return false;
      }
      return true;
  }
}

function checkCircumstances(test: TestInput, path: string, problems: Problem[]): void {
  const { unreadable, date, takenFrom, aliveWhenTaken, daysSinceControl } = test;
  if (unreadable !== undefined && !(Number.isInteger(unreadable) && unreadable >= 0)) {
    problems.push(wrong(`${path}.unreadable`, unreadable, "a whole number, 0 or more"));
  }
  if (date !== undefined && !(typeof date === "string" && isDay(date))) {
    problems.push(wrong(`${path}.date`, date, "a day as YYYY-MM-DD"));
  }
  if (takenFrom !== undefined && !bodies.includes(takenFrom)) {
    problems.push(wrong(`${path}.takenFrom`, takenFrom, words(bodies)));
  }
  if (aliveWhenTaken !== undefined && typeof aliveWhenTaken !== "boolean") {
    problems.push(wrong(`${path}.aliveWhenTaken`, aliveWhenTaken, "true or false"));
  }
  if (daysSinceControl !== undefined && !(Number.isFinite(daysSinceControl) && daysSinceControl >= 0)) {
    problems.push(wrong(`${path}.daysSinceControl`, daysSinceControl, "days, 0 or more"));
  }
}
