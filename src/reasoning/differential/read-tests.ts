/** Checks test results, each by what its test counts. */
import { type TestId, tellsApart, testIds } from "../../knowledge/index.ts";
import { daysBetween, isDay, type Problem, problem } from "../../units/index.ts";
import type { FoundResult, TestInput } from "./input.ts";
import { lateResultDays, mostMitesPerBee, mostSporesMillions, mostUnreadable } from "./judgements.ts";
import { countedBees } from "./levels.ts";
import { isDayGiven, isUnfit, type Look } from "./unfit-specimen.ts";
import { weighedTests } from "./weighed-tests.ts";
import { unknownFields, words, wrong } from "./wrong-value.ts";

const results = ["found", "none-found", "unclear"] as const;
const bodies = ["S", "E", "B", "F", "D"] as const;
const keepings = ["ethanol-70", "frozen", "fresh", "dry"] as const;

/** Fields that every test may have. */
const commonFields = ["test", "date", "takenFrom", "aliveWhenTaken", "daysSinceControl", "kept"] as const;
/** Fields of the result, by how the test is weighed. */
const resultFields = {
  "tracheal-count": ["positive", "examined", "unreadable"],
  "varroa-count": ["mites", "bees", "recovery"],
  spores: ["sporesMillionsPerBee", "result"],
  "tracheal-found": ["result", "sequenced"],
  found: ["result", "which", "harmfulDose", "daysUntilFrozen"],
} as const;
const allFields: readonly string[] = [...new Set([...commonFields, ...Object.values(resultFields).flat()])];

/** Tests as they were given. */
export interface ReadTests {
  /** Those that can be weighed; the others are noted as problems that do not block. */
  readonly tests: readonly TestInput[];
  /** Where each of them stands among those given. */
  readonly testsAt: readonly number[];
  /** Those that cannot be of what their test asks for: they count for nothing, and a mite they show is a mite. */
  readonly setAside: readonly TestInput[];
  /** Those that found what they look for, weighed or not. */
  readonly found: readonly FoundResult[];
}

const none: ReadTests = { tests: [], testsAt: [], setAside: [], found: [] };

/** Why a result cannot be, whatever else is known of the case; null where it can. Its field begins with `tests[0]`. */
export function unfitTest(test: TestInput): Problem | null {
  const problems: Problem[] = [];
  readTests([test], problems);
  return problems.find(({ severity }) => severity === "blocked") ?? null;
}

/** The tests that can be weighed beside this look, and those that found something. */
export function readTests(given: unknown, problems: Problem[], look: Look = {}): ReadTests {
  if (given === undefined) return none;
  if (!Array.isArray(given)) {
    problems.push(wrong("tests", given, "a list of tests"));
    return none;
  }
  const uses = (given as TestInput[]).map((test, index) => useOf(test, { path: `tests[${index}]`, problems, look }));
  const having = (use: Use) =>
    (given as TestInput[]).filter((_, index) => uses[index] === use).map(withoutForeignFields);
  const found = (given as TestInput[]).flatMap((test): readonly FoundResult[] =>
    test?.result === "found" && hasResult(test.test as TestId)
      ? [{ test: test.test as TestId, which: test.which ?? null }]
      : [],
  );
  const testsAt = [...uses.keys()].filter((index) => uses[index] === "weighed");
  return { tests: having("weighed"), testsAt, setAside: having("set-aside"), found };
}

type Use = "weighed" | "set-aside" | "none";

function useOf(test: TestInput, { path, problems, look }: Place & { readonly look: Look }): Use {
  if (typeof test !== "object" || test === null) {
    problems.push(wrong(path, test, "a test with its result"));
    return "none";
  }
  problems.push(...unknownFields(test as unknown as Record<string, unknown>, allFields, `${path}.`));
  if (!(testIds as readonly string[]).includes(test.test)) {
    problems.push(wrong(`${path}.test`, test.test, `one of ${words(testIds)}`));
    return "none";
  }
  const id = test.test as TestId;
  checkCircumstances(test, path, problems);
  noteLate(test, { path, problems, look });
  const model = weighedTests[id]?.model;
  if (model === undefined) {
    problems.push(problem("test-not-weighed", "noted", `${path}.test`, { given: id, slots: { test: id } }));
    return "none";
  }
  noteForeignFields(id, test, { path, problems });
  const fits = !isUnfit(id, test, { path, problems, look });
  if (!resultChecks[model](test, { path, problems })) return "none";
  return fits ? "weighed" : "set-aside";
}

interface Place {
  readonly path: string;
  readonly problems: Problem[];
}

/** A field that the test does not have is left out, and both are named. */
function noteForeignFields(id: TestId, test: TestInput, { path, problems }: Place): void {
  const own: readonly string[] = [...commonFields, ...fieldsOf(id)];
  for (const field of Object.keys(test)) {
    if (own.includes(field) || !allFields.includes(field)) continue;
    const given = String(test[field as keyof TestInput]);
    problems.push(
      problem("field-not-of-test", "warned", `${path}.${field}`, {
        given,
        expected: words(fieldsOf(id)),
        slots: { test: id, field, given },
      }),
    );
  }
}

/** The test with what belongs to it alone. */
function withoutForeignFields(test: TestInput): TestInput {
  const own: readonly string[] = [...commonFields, ...fieldsOf(test.test as TestId)];
  return Object.fromEntries(Object.entries(test).filter(([field]) => own.includes(field))) as unknown as TestInput;
}

/** Whether "found" is a result of this test; of tests that are not weighed it may be. */
const hasResult = (id: TestId): boolean => weighedTests[id] === undefined || fieldsOf(id).includes("result");

/** Fields of the result that this test has. */
function fieldsOf(id: TestId): readonly string[] {
  const model = weighedTests[id]?.model;
  if (model === "tracheal-found") return id === "pooled-pcr" ? resultFields[model] : ["result"];
  if (model !== "found") return model === undefined ? [] : resultFields[model];
  if (id === "residue-screen") return ["result", "harmfulDose", "daysUntilFrozen"];
  return tellsApart(id).length > 0 ? ["result", "which"] : ["result"];
}

/** Whether a result can be weighed, by how its test is weighed; what is wrong with it goes into the problems. */
const resultChecks: Readonly<Record<keyof typeof resultFields, (test: TestInput, place: Place) => boolean>> = {
  "tracheal-count": (test, place) => {
    if (isEmpty(test, ["positive", "examined"], place)) return false;
    const examined = whole(test, "examined", { least: 1, place });
    if (examined === null) whole(test, "positive", { least: 0, place });
    else isShareOf(examined, test.positive, place);
    return true;
  },
  "varroa-count": (test, place) => {
    const { path, problems } = place;
    if (isEmpty(test, ["mites", "bees"], place)) return false;
    const [mites, bees] = [whole(test, "mites", { least: 0, place }), whole(test, "bees", { least: 1, place })];
    const { recovery } = test;
    const model = weighedTests[test.test as TestId];
    if (recovery === undefined && model?.model === "varroa-count" && model.recovery === null) {
      problems.push(problem("test-needs-recovery", "noted", `${path}.recovery`, { slots: { test: test.test } }));
      return false;
    }
    if (recovery !== undefined && !(recovery > 0 && recovery <= 1))
      problems.push(wrong(`${path}.recovery`, recovery, "above 0 and at most 1"));
    if (mites !== null && bees !== null && mites > mostMitesPerBee * countedBees(test)) {
      const most = `at most ${mostMitesPerBee} mites a bee, corrected for what the wash leaves on them`;
      problems.push(wrong(`${path}.mites`, mites, most));
    }
    return true;
  },
  spores: (test, { path, problems }) => {
    const spores = test.sporesMillionsPerBee;
    if (test.result === "unclear") return isFoundOrNot(test, { path, problems });
    if (spores === 0 && test.result === "found")
      problems.push(wrong(`${path}.result`, test.result, "none-found, since 0 spores a bee are given"));
    if (spores === undefined && test.result === "none-found") return true;
    if (spores !== undefined && spores > 0 && test.result === "none-found")
      problems.push(wrong(`${path}.result`, test.result, `found, since ${spores} million spores a bee are given`));
    if (!(typeof spores === "number" && spores >= 0 && spores <= mostSporesMillions))
      problems.push(
        wrong(`${path}.sporesMillionsPerBee`, spores, `millions of spores a bee, 0 to ${mostSporesMillions}`),
      );
    return true;
  },
  "tracheal-found": isFoundOrNot,
  found: (test, place) => isFoundOrNot(test, place) && isNamed(test, place),
};

/** Bees found positive are a whole number of those examined; what is not, and could be a percentage reckoned back, is told as the share that it is. */
function isShareOf(examined: number, positive: unknown, { path, problems }: Place): void {
  if (typeof positive === "number" && Number.isInteger(positive) && positive >= 0 && positive <= examined) return;
  const isBetween = typeof positive === "number" && positive > 0 && positive < examined;
  const share = isBetween ? `; ${positive} would be ${((100 * positive) / examined).toFixed(2)} % of ${examined}` : "";
  problems.push(wrong(`${path}.positive`, positive, `a whole number, 0 to the ${examined} bees examined${share}`));
}

/** A result of a day well after the look is of other bees, or the day is a slip: it is weighed, and told. */
function noteLate({ test, date }: TestInput, { path, problems, look }: Place & { readonly look: Look }): void {
  if (!isDayGiven(date) || !isDayGiven(look.date)) return;
  const days = daysBetween(look.date, date);
  if (days <= lateResultDays) return;
  problems.push(
    problem("test-after-look", "noted", `${path}.date`, {
      given: date,
      expected: `at most ${lateResultDays} days after the look of ${look.date}`,
      slots: { test, on: date, look: look.date, days },
    }),
  );
}

function isFoundOrNot(test: TestInput, { path, problems }: Place): boolean {
  if (!results.includes(test.result as never)) problems.push(wrong(`${path}.result`, test.result, words(results)));
  if (test.result !== "unclear") return true;
  problems.push(problem("test-unclear", "noted", `${path}.result`, { given: "unclear", slots: { test: test.test } }));
  return false;
}

/** Whether a find of this test counts only when it is told what was found: opened brood shows three things, of no one trouble. */
export const needsWhich = (test: string): boolean => test === "uncap-brood";

/** What was found is one of the things that the test finds; opened brood does not speak for varroa unless it says so. */
function isNamed(test: TestInput, { path, problems }: Place): boolean {
  const apart = tellsApart(test.test as TestId);
  const { which, result } = test;
  if (result === "found" && which === undefined && needsWhich(test.test)) {
    problems.push(problem("test-needs-which", "noted", `${path}.which`, { slots: { test: test.test } }));
    return false;
  }
  if (which === undefined || apart.length === 0) return true;
  const fits = Array.isArray(which) && which.length > 0 && which.every((each) => apart.includes(each));
  if (!fits) problems.push(wrong(`${path}.which`, which, `one or more of ${words(apart)}`));
  if (fits && result !== "found") problems.push(wrong(`${path}.result`, result, "found, since it is told what"));
  return true;
}

function whole(
  test: TestInput,
  field: "positive" | "examined" | "mites" | "bees",
  { least, place: { path, problems } }: { readonly least: number; readonly place: Place },
): number | null {
  const value = test[field];
  const fine = Number.isInteger(value) && (value ?? -1) >= least;
  if (!fine) problems.push(wrong(`${path}.${field}`, value, `a whole number, ${least} or more`));
  return fine ? (value ?? null) : null;
}

/** Nothing could be read: no answer, and no reason to refuse the rest of the case. */
function isEmpty(
  test: TestInput,
  [count, of]: readonly ["positive", "examined"] | readonly ["mites", "bees"],
  { path, problems }: Place,
): boolean {
  if (test[count] !== 0 || test[of] !== 0) return false;
  problems.push(problem("test-unclear", "noted", `${path}.${of}`, { given: 0, slots: { test: test.test } }));
  return true;
}

function checkCircumstances(test: TestInput, path: string, problems: Problem[]): void {
  const { unreadable, date, takenFrom, aliveWhenTaken, daysSinceControl, daysUntilFrozen, kept } = test;
  if (unreadable !== undefined && !(Number.isInteger(unreadable) && unreadable >= 0 && unreadable <= mostUnreadable)) {
    problems.push(
      wrong(
        `${path}.unreadable`,
        unreadable,
        `a whole number, 0 to ${mostUnreadable}, beside the ${test.examined ?? 0} bees that could be read`,
      ),
    );
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
  if (daysUntilFrozen !== undefined && !(Number.isFinite(daysUntilFrozen) && daysUntilFrozen >= 0)) {
    problems.push(wrong(`${path}.daysUntilFrozen`, daysUntilFrozen, "days, 0 or more"));
  }
  for (const field of ["sequenced", "harmfulDose"] as const) {
    if (test[field] !== undefined && typeof test[field] !== "boolean")
      problems.push(wrong(`${path}.${field}`, test[field], "true or false"));
  }
  if (kept !== undefined && !keepings.includes(kept)) problems.push(wrong(`${path}.kept`, kept, words(keepings)));
  if (takenFrom === "D" && aliveWhenTaken === true) {
    problems.push(wrong(`${path}.aliveWhenTaken`, true, "false, since the bees were taken from the dead ones (D)"));
  }
}
