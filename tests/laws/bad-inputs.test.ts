/** Bad inputs of every statistical function of the façade: a named refusal, never NaN, never an end of numbers, never a hang. */
import { describe, expect, it } from "vitest";
import * as reasoning from "../../src/reasoning/index.ts";
import { DomainError, type Problem, type Result } from "../../src/units/index.ts";
import { changed, type GoodRequest, nodesOf, silences } from "./changed-inputs.ts";
import { goodRequests } from "./good-requests.ts";

/** Exported, but no statistics, or a part that takes what another function checked and made: tested in their folders. */
const elsewhere = {
  sampling: [
    "evenestFixedPlan",
    "judgedPlan",
    "larger",
    "planReason",
    "planSample",
    "plannedStop",
    "runningPath",
    "saidAtEnd",
    "samplingProblem",
    "stoppingWalk",
    "wholeShare",
  ],
  bench: [
    "beeResult",
    "benchProblem",
    "betaBinomialLikelihood",
    "bySidesRead",
    "negativeBinomialLogLikelihood",
    "oneSize",
    "poolTotals",
    "poissonLogLikelihood",
    "reading",
    "tally",
  ],
  efficacy: ["allInfested", "efficacyLimits", "efficacyProblem"],
  decision: ["bestByUtility", "decisionProblem", "lossCurveProblem", "winterLossAt"],
  surveillance: ["areaTrouble", "oddsRatio", "randomInterceptTests", "surveillanceProblem", "typicalShare"],
  differential: [
    "belief",
    "compareCauses",
    "confirms",
    "differential",
    "groupOfTest",
    "isPossible",
    "needsWhich",
    "posteriorsUnder",
    "priorProbabilities",
    "quantiles",
    "readCase",
    "startOf",
    "statedPosteriors",
    "unfitTest",
  ],
} as const;

type Folder = keyof typeof elsewhere;
const folders = Object.keys(elsewhere) as readonly Folder[];
const requests = folders.flatMap((folder) =>
  Object.entries(goodRequests[folder] ?? {}).map(([name, request]) => ({ folder, name, request })),
);

/** What a call comes to: the parameter a caller's bug is named by, the codes of a refusal, or an answer. */
type Outcome =
  | { readonly kind: "bug"; readonly parameter: string }
  | { readonly kind: "refused"; readonly problems: readonly Problem[] }
  | { readonly kind: "answered"; readonly value: unknown };

function outcome({ call }: GoodRequest, args: readonly unknown[]): Outcome {
  try {
    const value = (call as (...each: readonly unknown[]) => unknown)(...args);
    const result = value as Result<unknown>;
    const isRefusal = typeof value === "object" && value !== null && "ok" in value && !result.ok;
    return isRefusal ? { kind: "refused", problems: result.problems } : { kind: "answered", value };
  } catch (error) {
    if (error instanceof DomainError) return { kind: "bug", parameter: error.parameter };
    throw error;
  }
}

/** A refusal names itself; an answer holds finite numbers only. */
function ensureHonest(found: Outcome, where: string): void {
  if (found.kind === "bug") expect(found.parameter, where).not.toBe("");
  else if (found.kind === "refused") expect(found.problems[0]?.code, where).toMatch(/^[a-z][a-z-]+$/);
  else expect(silences(found.value), where).toEqual([]);
}

describe("every statistical function", () => {
  it.each(folders)("stands among the good requests, or has its reason not to: %s", (folder) => {
    const module = new Map(Object.entries(new Map(Object.entries(reasoning)).get(folder) as object));
    const offered = [...module].filter(([, member]) => typeof member === "function").map(([name]) => name);
    expect([...Object.keys(goodRequests[folder] ?? {}), ...elsewhere[folder]].sort()).toEqual(offered.sort());
  });

  it.each(requests)("answers its good request in finite numbers: $folder $name", ({ request }) => {
    const found = outcome(request, request.args);
    expect(found.kind).toBe("answered");
    ensureHonest(found, "");
  });

  it.each(requests)("takes neither NaN nor what has no end for a number: $folder $name", ({ name, request }) => {
    for (const { path, value } of nodesOf(request)) {
      if (typeof value !== "number") continue;
      for (const wrong of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
        // A cap that is not given is a cap without end.
        if (name === "allocateByRisk" && path.at(-1) === "cap" && wrong === Number.POSITIVE_INFINITY) continue;
        const where = `${path.join(".")} = ${wrong}`;
        const found = outcome(request, changed(request.args, path, wrong));
        expect(found.kind, where).not.toBe("answered");
        ensureHonest(found, where);
      }
    }
  });

  it.each(requests)("answers in finite numbers or refuses by name, whatever one number is: $folder $name", (each) => {
    const { request } = each;
    for (const { path, value } of nodesOf(request)) {
      if (typeof value !== "number") continue;
      const others = [-1, 0, 0.5, 1, 1.5, 2, 1e-12, 1e-300, -value, value / 2, value + 1, 3 * value + 1];
      for (const other of others) {
        ensureHonest(outcome(request, changed(request.args, path, other)), `${path.join(".")} = ${other}`);
      }
    }
  });

  it.each(requests)("so too when a list is empty, short, doubled or all alike: $folder $name", ({ request }) => {
    for (const { path, value } of nodesOf(request)) {
      if (!Array.isArray(value) || path.length === 0) continue;
      for (const other of [[], value.slice(1), [...value, ...value], value.map(() => value[0] as unknown)]) {
        ensureHonest(
          outcome(request, changed(request.args, path, other)),
          `${path.join(".")}, ${other.length} members`,
        );
      }
    }
  });
});

describe("counts", () => {
  /** Fields that count: half of one is the caller's bug wherever it stands. */
  const counts = new Set(["positive", "examined", "infested", "pools", "mites", "bees", "cases", "units", "maxBees"]);

  it.each(requests)("are whole: $folder $name", ({ request }) => {
    for (const { path, value } of nodesOf(request)) {
      const field = path.at(-1);
      if (typeof value !== "number" || !counts.has(String(field)) || !Number.isInteger(value)) continue;
      const found = outcome(request, changed(request.args, path, value + 0.5));
      expect(found.kind, path.join(".")).toBe("bug");
    }
  });

  it.each(requests)("do not exceed what they are counted of, nor are they of nothing: $folder $name", ({ request }) => {
    for (const [part, whole] of [
      ["positive", "examined"],
      ["infested", "examined"],
      ["positive", "pools"],
    ] as const) {
      for (const { path, value } of nodesOf(request)) {
        if (typeof value !== "object" || value === null || !(part in value) || !(whole in value)) continue;
        const held = value as unknown as Readonly<Record<string, number>>;
        const isShareOfGroup = "population" in held;
        if (isShareOfGroup || typeof held[part] !== "number") continue;
        const more = outcome(request, changed(request.args, [...path, part], (held[whole] as number) + 1));
        expect(more.kind, `${path.join(".")} ${part} > ${whole}`).not.toBe("answered");
      }
    }
  });
});
