/** How an answer of the library is held against a reference case: by tolerance class, member by member. */

/** One case of a file of reference values. */
export interface ReferenceCase {
  readonly id: string;
  readonly method: string;
  readonly input: Readonly<Record<string, unknown>>;
  readonly expected: unknown;
  /** Read by its leading words: `integer`, `abs 1e-8`, `rel 1e-10`, `rel 1e-4, loglik abs 1e-6`. */
  readonly tol: string;
}

/** A method by the name the cases use. It renames what goes in and what comes out, and computes nothing. */
export type Method = (input: never) => unknown;

/** One thing that is not as expected. `field` is a path inside the answer; empty for the case as a whole. */
export interface Disagreement {
  readonly id: string;
  readonly field: string;
  readonly expected: string;
  readonly got: string;
}

interface Tolerance {
  readonly kind: "rel" | "abs";
  readonly size: number;
  /** Absolute tolerance of log-likelihoods, where the class names one. */
  readonly logLikelihood: number | null;
}

/** Sums of whole costs may carry the rounding of their addends; a whole number this near another is that number. */
const ofWholeNumbers = 1e-9;
/** Below this size a relative comparison means nothing: the absolute one takes its place. */
const asGoodAsZero = { expected: 1e-300, absolute: 1e-12 };

/** Every disagreement of one case, none when it passes. */
export function disagreements(
  methods: Readonly<Record<string, Method>>,
  { id, method, input, expected, tol }: ReferenceCase,
): readonly Disagreement[] {
  const whole = (wanted: string, got: string): Disagreement => ({ id, field: "", expected: wanted, got });
  const tolerance = readTolerance(tol);
  if (!tolerance) return [whole("a tolerance class", JSON.stringify(tol) ?? "nothing")];
  const answer = answerOf(methods, { method, input });
  if ("trouble" in answer) return [whole(answer.wanted, answer.trouble)];
  const unused = Object.keys(input).filter((name) => !answer.used.has(name));
  return [
    ...unused.map((name) => whole("every input used", `input ${name} is not`)),
    ...differences(expected, answer.got, { field: "", tolerance }).map((each) => ({ id, ...each })),
  ];
}

/** What the library answers to a case, with the inputs it looked at; or why there is no answer. */
export function answerOf(
  methods: Readonly<Record<string, Method>>,
  { method, input }: Pick<ReferenceCase, "method" | "input">,
):
  | { readonly got: unknown; readonly used: ReadonlySet<string> }
  | { readonly wanted: string; readonly trouble: string } {
  const run = Object.hasOwn(methods, method) ? methods[method] : undefined;
  if (!run) return { wanted: "a known method", trouble: JSON.stringify(method) ?? "nothing" };
  const used = new Set<string>();
  const watched = new Proxy(input, {
    get: (target, name) => {
      used.add(String(name));
      return Reflect.get(target, name);
    },
  });
  try {
    return { got: run(watched as never), used };
  } catch (error) {
    return { wanted: "an answer", trouble: `${error}` };
  }
}

function readTolerance(tol: unknown): Tolerance | null {
  if (typeof tol !== "string") return null;
  if (/^integer\b/.test(tol)) return { kind: "abs", size: ofWholeNumbers, logLikelihood: null };
  const [, kind, size] = /^(rel|abs) ([\d.]+(?:e[-+]?\d+)?)/.exec(tol) ?? [];
  if ((kind !== "rel" && kind !== "abs") || size === undefined) return null;
  const logLikelihood = /\bloglik abs ([\d.]+(?:e[-+]?\d+)?)/.exec(tol)?.[1];
  return { kind, size: Number(size), logLikelihood: logLikelihood === undefined ? null : Number(logLikelihood) };
}

type Place = { readonly field: string; readonly tolerance: Tolerance };

function differences(expected: unknown, got: unknown, place: Place): readonly Omit<Disagreement, "id">[] {
  const { field } = place;
  const differs = [{ field, expected: shown(expected), got: shown(got) }];
  if (expected === null) return isSaidAsProblem(got) ? [] : [{ ...differs[0], expected: "a problem" } as never];
  if (typeof expected === "number") return typeof got === "number" && agree(expected, got, place) ? [] : differs;
  if (typeof expected !== "object") return expected === got ? [] : differs;
  if (typeof got !== "object" || got === null || Array.isArray(got) !== Array.isArray(expected)) return differs;
  if (Array.isArray(expected) && Array.isArray(got) && expected.length !== got.length) return differs;
  return Object.entries(expected).flatMap(([name, value]) =>
    differences(value, Object.hasOwn(got, name) ? (got as Record<string, unknown>)[name] : undefined, {
      ...place,
      field: field === "" ? name : `${field}.${name}`,
    }),
  );
}

/** True of what the library gives where there is no answer: a Problem, or a Result that is not ok. */
export function isSaidAsProblem(got: unknown): boolean {
  if (typeof got !== "object" || got === null) return false;
  if ("ok" in got && "problems" in got)
    return got.ok === false && Array.isArray(got.problems) && got.problems.length > 0;
  return "code" in got && "severity" in got && typeof got.code === "string" && got.code !== "";
}

function agree(expected: number, got: number, { field, tolerance }: Place): boolean {
  const distance = Math.abs(got - expected);
  if (tolerance.logLikelihood !== null && /log_?lik/i.test(field)) return distance <= tolerance.logLikelihood;
  if (tolerance.kind === "abs") return distance <= tolerance.size;
  if (Math.abs(expected) < asGoodAsZero.expected) return distance <= asGoodAsZero.absolute;
  return distance <= tolerance.size * Math.abs(expected);
}

/** A value as text in which nothing is lost: NaN is not null, and what is missing is said. */
function shown(value: unknown): string {
  return value === undefined ? "nothing" : (JSON.stringify(value, spoken) ?? String(value));
}

/** For JSON.stringify: numbers that JSON has no word for are written as text. */
export const spoken = (_: string, value: unknown): unknown =>
  typeof value === "number" && !Number.isFinite(value) ? String(value) : value;
