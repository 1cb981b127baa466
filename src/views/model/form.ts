/**
 * Reads what someone typed into a form: values of the right kind, or one problem for each field that is not.
 *
 * @module views/model
 */
import { answered, blocked, type Day, isDay, type Problem, problem, type Result } from "../../units/index.ts";

/** What stands in the fields, by name. A box that is not ticked is not there. */
export type Fields = Readonly<Record<string, string>>;

/** Reads fields one by one and gathers the problems. */
export interface FormReader {
  /** Trimmed text; a problem when it is empty. */
  readonly text: (name: string) => string;
  /** Trimmed text, or undefined when empty. */
  readonly maybeText: (name: string) => string | undefined;
  /** A number within the bounds, decimal point or comma; a problem otherwise. `whole` refuses fractions. */
  readonly number: (name: string, bounds: NumberBounds) => number;
  /** The same, or undefined when the field is empty. */
  readonly maybeNumber: (name: string, bounds: NumberBounds) => number | undefined;
  readonly day: (name: string) => Day;
  readonly maybeDay: (name: string) => Day | undefined;
  /** One of the words; a problem when none was chosen. */
  readonly oneOf: <Word extends string>(name: string, words: readonly Word[]) => Word;
  /** Adds a problem of one's own. */
  readonly complain: (trouble: Problem) => void;
  /** The value built from the fields, or every problem. */
  readonly result: <Value>(value: Value) => Result<Value>;
}

export interface NumberBounds {
  readonly min: number;
  readonly max: number;
  readonly whole?: boolean;
  /** Unit for the sentence, such as `°C`. */
  readonly unit?: string;
}

/**
 * A number as people type it.
 * @example
 * parseNumber(" 1,5 ")  // → 1.5
 * parseNumber("−3")  // → -3
 * parseNumber("a lot")  // → null
 */
export function parseNumber(typed: string): number | null {
  const plain = typed.trim().replace("−", "-").replace(",", ".");
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : null;
}

/** A reader of these fields. */
export function readForm(fields: Fields): FormReader {
  const problems: Problem[] = [];
  const complain = (trouble: Problem) => void problems.push(trouble);
  const raw = (name: string) => (fields[name] ?? "").trim();
  const missing = (name: string) => complain(problem("field-empty", "blocked", name, { given: "" }));

  const readNumber = (name: string, { min, max, whole = false, unit = "" }: NumberBounds): number => {
    const number = parseNumber(raw(name));
    const slots = { given: raw(name), min, max, unit };
    if (number === null) complain(problem("field-not-number", "blocked", name, { given: raw(name), slots }));
    else if (number < min || number > max)
      complain(problem("field-out-of-range", "blocked", name, { given: raw(name), slots }));
    else if (whole && !Number.isInteger(number))
      complain(problem("field-not-whole", "blocked", name, { given: raw(name), slots }));
    return number ?? min;
  };
  const readDay = (name: string): Day => {
    if (!isDay(raw(name)))
      complain(problem("field-not-day", "blocked", name, { given: raw(name), slots: { given: raw(name) } }));
    return raw(name);
  };
  return {
    text: (name) => {
      if (raw(name) === "") missing(name);
      return raw(name);
    },
    maybeText: (name) => raw(name) || undefined,
    number: (name, bounds) => {
      if (raw(name) !== "") return readNumber(name, bounds);
      missing(name);
      return bounds.min;
    },
    maybeNumber: (name, bounds) => (raw(name) === "" ? undefined : readNumber(name, bounds)),
    day: (name) => {
      if (raw(name) !== "") return readDay(name);
      missing(name);
      return "";
    },
    maybeDay: (name) => (raw(name) === "" ? undefined : readDay(name)),
    oneOf: <Word extends string>(name: string, words: readonly Word[]): Word => {
      const chosen = words.find((word) => word === raw(name));
      if (chosen === undefined) complain(problem("field-not-chosen", "blocked", name, { given: raw(name) }));
      return chosen ?? (words[0] as Word);
    },
    complain,
    result: (value) => (problems.length > 0 ? blocked(...problems) : answered(value)),
  };
}

/**
 * Leaves out the members that are undefined, as the schemas of the journal want it.
 * @example
 * present({ a: 1, b: undefined })  // → {"a":1}
 */
export function present<Value extends object>(value: Value): { [Key in keyof Value]: Exclude<Value[Key], undefined> } {
  return Object.fromEntries(Object.entries(value).filter(([, each]) => each !== undefined)) as {
    [Key in keyof Value]: Exclude<Value[Key], undefined>;
  };
}
