/** All tests, by id. */
import { colonyTests } from "./colony.ts";
import { gutAndBroodTests } from "./gut-and-brood.ts";
import { miteTests } from "./mites.ts";
import type { TestFact } from "./test-fact.ts";

export type { CostClass, Keeping, Places, ResultKind, TakenFrom, TestFact } from "./test-fact.ts";

const records = { ...miteTests, ...gutAndBroodTests, ...colonyTests } as const;

/** Id of a test. */
export type TestId = keyof typeof records;

/** Every test by its id: specimen, what it can miss, cost class, days, minutes, how it misleads. */
export const tests: { readonly [Id in TestId]: TestFact<Id> } = records;

/** Ids of all tests, in the order of the evidence. */
export const testIds: readonly TestId[] = Object.keys(tests) as TestId[];
