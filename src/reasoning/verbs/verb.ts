/** What a verb is: one question that people and programs can ask, with the schemas of question and answer. */
import * as z from "zod";
import { type Problem, problem, type Result } from "../../units/index.ts";
import { pathOf, readInput, valueAt } from "./read-input.ts";
import type { Shape } from "./shape.ts";

/** answered: exit 0; refused: lawful, exit 0, by rules that stand in the way, with what can be said all the same; unfit: the input must be mended, exit 2. */
export type Reply =
  | { readonly kind: "answered"; readonly value: object; readonly problems: readonly Problem[] }
  | {
      readonly kind: "refused";
      readonly value: object;
      readonly problems: readonly Problem[];
      readonly by: readonly string[];
    }
  | { readonly kind: "unfit"; readonly problems: readonly Problem[] };

/** Share of the work done, 0 to 1, told now and then by a method that takes long. */
export type Progress = (share: number) => void;

/** What a question is about. `case`: asked with a whole case; the others also by hand, in the reckoner. */
export type Family = (typeof families)[number];
export const families = [
  "case",
  "shares",
  "designs",
  "pools",
  "sequential",
  "clusters",
  "counts",
  "freedom",
  "places",
  "comparison",
  "readers",
  "decisions",
] as const;

export interface Verb<Answer = object> {
  /** As typed: `sample-size`. */
  readonly name: string;
  readonly family: Family;
  /** One line: what it answers. */
  readonly summary: string;
  /** What the answer rests on, one sentence each. */
  readonly assumptions: readonly string[];
  /** Where the method comes from; a source key or a description. */
  readonly source: string;
  /** An input that is answered. */
  readonly example: object;
  readonly input: z.ZodType;
  readonly output: z.ZodType;
  /** The input schema as JSON Schema: what may be left out is optional. */
  readonly inputShape: Shape;
  readonly outputShape: Shape;
  /** Answers a question as it came from outside. */
  readonly ask: (raw: unknown, progress?: Progress) => Reply;
  /** The same with the work done elsewhere, in threads of the caller's: `run` gives what the verb's own would, or null when it was stopped. */
  readonly askThrough: (raw: unknown, run: (input: unknown) => Promise<Result<object> | null>) => Promise<Reply | null>;
  /** Holds the answer's type for `AnswerOf`; never there. */
  readonly answer?: Answer;
}

/** What a verb answers, all the way down as its schema says. */
export type AnswerOf<V> = V extends Verb<infer Answer> ? Answer : never;

/** A value nobody may change, all the way down. */
export type Deep<T> = T extends readonly (infer Item)[]
  ? readonly Deep<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]: Deep<T[Key]> }
    : T;

export interface VerbDraft<I extends z.ZodType, O extends z.ZodType> {
  readonly name: string;
  readonly family: Family;
  readonly summary: string;
  readonly assumptions: readonly string[];
  readonly source: string;
  readonly example: z.input<I> & object;
  readonly input: I;
  readonly output: O;
  /** Codes of problems that are lawful refusals and no fault of the input. */
  readonly refusals?: readonly string[];
  readonly run: (input: z.output<I>, progress: Progress) => Result<Deep<z.output<O>> & object>;
}

const untold: Progress = () => {};

/** A verb from its draft: adds the JSON Schemas and the reading of what came from outside. */
export function verb<I extends z.ZodType, O extends z.ZodType>(draft: VerbDraft<I, O>): Verb<Deep<z.output<O>>> {
  const { name, family, summary, assumptions, source, example, input, output, refusals = [], run } = draft;
  const inputShape = z.toJSONSchema(input, { io: "input" }) as Shape;
  const outputShape = z.toJSONSchema(output, { io: "output" }) as Shape;
  const ask = (raw: unknown, progress: Progress = untold): Reply => {
    const read = readInput(input, inputShape, raw);
    if (!read.ok) return { kind: "unfit", problems: read.problems };
    return replyTo(raw, run(read.value, progress));
  };
  const askThrough: Verb["askThrough"] = async (raw, elsewhere) => {
    const read = readInput(input, inputShape, raw);
    if (!read.ok) return { kind: "unfit", problems: read.problems };
    const result = await elsewhere(read.value);
    return result === null ? null : replyTo(raw, result);
  };
  const replyTo = (raw: unknown, result: Result<object>): Reply => {
    const problems = result.problems.map((each) => withGiven(each, raw));
    const by = refusals.filter((code) => problems.some((each) => each.code === code));
    if (by.length > 0) return { kind: "refused", value: result.ok ? result.value : {}, problems, by };
    return result.ok ? { kind: "answered", value: result.value, problems } : { kind: "unfit", problems };
  };
  const shapes = { inputShape, outputShape };
  return { name, family, summary, assumptions, source, example, input, output, ...shapes, ask, askThrough };
}

/** A step names the field; what was given there is looked up in the input. */
const withGiven = (each: Problem, raw: unknown): Problem =>
  each.given !== undefined || each.field === null ? each : { ...each, given: valueAt(raw, pathOf(each.field)) };

/** The problem of a name that is no verb. */
export const unknownVerb = (name: string, names: readonly string[]): Problem =>
  problem("verb-unknown", "blocked", "verb", { given: name, expected: `one of ${names.join(", ")}` });
