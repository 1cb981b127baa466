/**
 * What a method of the reckoner shows: its words, and its answer as a sentence and pictures.
 *
 * @module views/model
 */
import type { MethodName } from "../../../reasoning/index.ts";
import type { FieldWords, MethodWords } from "../../words/index.ts";
import type { PictureView } from "./pictures.ts";

/** The question as it was asked. */
export type Question = Readonly<Record<string, unknown>>;

export interface MethodView {
  readonly asks: string;
  readonly under: string;
  readonly fields: Readonly<Record<string, FieldWords>>;
  /** Asked beside what was typed, for the pictures: points of a curve, say. */
  readonly more: (question: Question) => Question;
  readonly says: (answer: object) => string;
  /** The method that goes on from this one with the fields that both have; null for none. */
  readonly onward: MethodName | null;
  /** The answer in pictures; none where figures say it all. */
  readonly pictures: (answer: object) => readonly PictureView[];
}

/** A method's view from its words and what it draws. */
export function methodView<Answer extends object>(draft: {
  readonly words: MethodWords<Answer>;
  readonly pictures: (answer: Answer) => readonly PictureView[];
  readonly more?: (question: Question) => Question;
  readonly onward?: MethodName;
}): MethodView {
  const { words, pictures, more = () => ({}), onward = null } = draft;
  const { asks, under, fields, says } = words;
  return {
    asks,
    under,
    fields,
    more,
    onward,
    says: (answer) => says(answer as Answer),
    pictures: (answer) => pictures(answer as Answer),
  };
}

/** So many values from one end to the other, both ends in. */
export const spread = (from: number, to: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, index) => Number((from + ((to - from) * index) / (count - 1)).toPrecision(12)));

/** A round end for a scale of shares that must show this one. */
export const roundEnd = (share: number): number =>
  [0.01, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5].find((end) => share <= end) ?? 1;

/**
 * A round end for a scale of counts or times that must show this value.
 * @example
 * niceEnd(7.3)  // → 8
 * niceEnd(0)  // → 1
 */
export function niceEnd(value: number): number {
  if (!(value > 0)) return 1;
  const size = 10 ** Math.floor(Math.log10(value));
  const steps = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];
  return Number(((steps.find((each) => value <= each * size * (1 + 1e-12)) ?? 10) * size).toPrecision(12));
}

/**
 * About eight rows of many, evenly chosen, to be told in words.
 * @example
 * fewOf([1, 2, 3])  // → [1,2,3]
 */
export const fewOf = <Row>(rows: readonly Row[]): readonly Row[] =>
  rows.filter((_, index) => index % Math.max(1, Math.ceil(rows.length / 8)) === 0);
