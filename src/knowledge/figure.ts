/** Figures that know how they were read: one from memory cannot become a default, and a dose never can. */
import { ensure } from "../units/index.ts";
import type { Citation, ReadMark } from "./fact.ts";

/** Marks under which a figure may stand as a default. A figure from memory must be chosen by a person. */
export type DefaultMark = Exclude<ReadMark, "memory">;

/** One number with its unit. */
export interface Figure<Mark extends ReadMark = ReadMark> {
  readonly kind: "figure";
  readonly value: number;
  readonly unit: string;
  readonly citation: Citation<Mark>;
}

/** From `low` to `high`; null where the source leaves an end open. */
export interface Span<Mark extends ReadMark = ReadMark> {
  readonly kind: "span";
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: string;
  readonly citation: Citation<Mark>;
}

/** What a source says was given. It is a report: no accessor turns it into a dose. Doses come from label records. */
export interface DoseReport<Mark extends ReadMark = ReadMark> {
  readonly kind: "dose-report";
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly citation: Citation<Mark>;
}

/**
 * The number of a figure that may serve as a default, in the figure's unit. A figure from memory does not compile:
 * a person has to choose it. Neither does a span or a dose report.
 */
export const defaultOf = <Mark extends DefaultMark>(figure: Figure<Mark>): number => figure.value;

/**
 * The middle of a span that may serve as a default, in the span's unit. A span from memory does not compile.
 *
 * @throws DomainError where the source leaves an end of the span open
 */
export function middleOf<Mark extends DefaultMark>(span: Span<Mark>): number {
  const { low, high } = span;
  ensure(low !== null && high !== null, "span", `${low}–${high}`, "closed at both ends");
  return (low + high) / 2;
}

/** Whether a figure, span or report may serve as a default. */
export const mayBeDefault = (figure: Figure | Span | DoseReport): figure is Figure<DefaultMark> | Span<DefaultMark> =>
  figure.kind !== "dose-report" && figure.citation.read !== "memory";

/** A figure. */
export const figure = <const Mark extends ReadMark>(
  value: number,
  unit: string,
  citation: Citation<Mark>,
): Figure<Mark> => ({ kind: "figure", value, unit, citation });

/** A span; an end is null where the source leaves it open. */
export const span = <const Mark extends ReadMark>(
  ends: readonly [number | null, number | null],
  unit: string,
  citation: Citation<Mark>,
): Span<Mark> => ({ kind: "span", low: ends[0], high: ends[1], unit, citation });

/** A report of a dose. */
export const doseReport = <const Mark extends ReadMark>(
  ends: readonly [number, number],
  unit: string,
  citation: Citation<Mark>,
): DoseReport<Mark> => ({ kind: "dose-report", low: ends[0], high: ends[1], unit, citation });
