/** Two kinds of trouble: the caller's bug is thrown, the user's data become a Problem value. */

/** A bug of the calling code: a parameter outside its range. */
export class DomainError extends RangeError {
  override name = "DomainError";
  readonly parameter: string;
  readonly value: unknown;
  constructor(parameter: string, value: unknown, allowed: string) {
    super(`${parameter} must be ${allowed}; got ${String(value)}`);
    this.parameter = parameter;
    this.value = value;
  }
}

/** Throws DomainError unless `condition` holds. */
export function ensure(condition: boolean, parameter: string, value: unknown, allowed: string): asserts condition {
  if (!condition) throw new DomainError(parameter, value, allowed);
}

/** blocked: no answer; warned: the answer stands, weakened; noted: what was assumed; unknown: absence of knowledge. */
export type Severity = "blocked" | "warned" | "noted" | "unknown";

/** Trouble in the user's data. The sentence is made in views/words from `code` and `slots`. */
export interface Problem {
  /** Kebab-case; each has a sentence in views/words. */
  readonly code: string;
  readonly severity: Severity;
  /** Which field of the input, as a path: `tests[0].positive`. Null when none is to blame. */
  readonly field: string | null;
  /** What was given, as it came. */
  readonly given?: unknown;
  /** What is expected, in a few plain words. */
  readonly expected?: string;
  /** Values the sentence needs. Numbers unrounded. */
  readonly slots: Readonly<Record<string, string | number>>;
}

/** Builds a Problem; `slots` defaults to none. */
export function problem(
  code: string,
  severity: Severity,
  field: string | null,
  detail: { readonly given?: unknown; readonly expected?: string; readonly slots?: Problem["slots"] } = {},
): Problem {
  return { code, severity, field, ...detail, slots: detail.slots ?? {} };
}

/** An answer, or the problems that stand in its way. Warnings travel with the answer. */
export type Result<T> =
  | { readonly ok: true; readonly value: T; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export const answered = <T>(value: T, problems: readonly Problem[] = []): Result<T> => ({ ok: true, value, problems });
export const blocked = (...problems: readonly Problem[]): Result<never> => ({ ok: false, problems });
