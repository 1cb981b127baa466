/** What must not compile: each marked line is an error, and the compiler complains when it is none. */
import type { Citation, ConditionFact, Frequency } from "./fact.ts";
import { type DoseReport, defaultOf, type Figure, figure, middleOf, type Span, span } from "./figure.ts";
import type { FindingId } from "./ids.ts";
import type { TestId } from "./tests/index.ts";

// @ts-expect-error an unknown source
export const unknownSource: Citation = { source: "hearsay-1999", at: "p. 1", read: "seen" };

// @ts-expect-error an unknown mark
export const unknownMark: Citation = { source: "pirk-2013", at: "2.2", read: "heard" };

// @ts-expect-error an unknown finding
export const unknownFinding: FindingId = "k-wing";

// @ts-expect-error an unknown test
export const unknownTest: TestId = "tracheal_dissection";

// @ts-expect-error an unknown grade
export const unknownGrade: Frequency = { grade: "often", source: "judgement" };

// @ts-expect-error a frequency of a finding that is none
export const unknownPair: ConditionFact["frequencies"] = { wobbling: { grade: "rare", source: "judgement" } };

// @ts-expect-error a figure without a citation
export const bareFigure: Figure = { kind: "figure", value: 1, unit: "bees" };

declare const remembered: Figure<"memory">;
declare const anyMark: Figure;
declare const rememberedSpan: Span<"memory">;
declare const seenSpan: Span<"seen">;
declare const dose: DoseReport<"seen">;

/** Never called: it is there to be compiled. */
export function neverDefaults(): readonly number[] {
  return [
    // @ts-expect-error from memory: a person must choose it
    defaultOf(remembered),
    // @ts-expect-error it might be from memory
    defaultOf(anyMark),
    // @ts-expect-error from memory: a person must choose it
    middleOf(rememberedSpan),
    // @ts-expect-error a span is no single figure
    defaultOf(seenSpan),
    // @ts-expect-error what a source reports is no dose to give
    defaultOf(dose),
    // @ts-expect-error what a source reports is no dose to give
    middleOf(dose),
  ];
}

/** What may be a default does compile. */
export const allowedDefaults = (): readonly number[] => [
  defaultOf(figure(59, "bees", { source: "pirk-2013", at: "2.2", read: "seen" })),
  middleOf(span([0.9, 0.95], "probability", { source: null, at: "table of tests", read: "judgement" })),
];
