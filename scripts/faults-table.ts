/** What a full run of the faults amounts to: each that was tried, held or failed. A failed run never reads as a good one. */
import type { Told } from "../tests/faults/count.ts";

/** What is read of the report that Vitest writes as JSON. */
export interface RunReport {
  readonly testResults: readonly {
    /** Path of the file. */
    readonly name: string;
    readonly status: string;
    readonly assertionResults: readonly { readonly fullName: string; readonly status: string }[];
  }[];
}

export interface FaultsTable {
  readonly lines: readonly string[];
  readonly hasFailed: boolean;
}

const cell = (text: string | number, width: number): string => String(text).padEnd(width);
const row = (outcome: string, tried: string | number, fault: string, against: string): string =>
  `${cell(outcome, 9)}${cell(tried, 9)}${cell(fault, 58)}${against}`.trimEnd();

/**
 * Told are the faults whose line arrived; `report` is null when the run ended without one. A line counts only when the
 * test that told it passed to its end, and a test that failed has a line whether it told one or not.
 */
export function faultsTable(told: readonly Told[], report: RunReport | null, status: number | null): FaultsTable {
  const files = report?.testResults ?? [];
  const tests = files.flatMap((file) => file.assertionResults);
  // Vitest parts the names by an arrow while it runs, and by a space in its report.
  const named = (test: string) => tests.find(({ fullName }) => fullName === test.replaceAll(" > ", " "));
  const lines = told.map((line) => ({ ...line, held: named(line.test)?.status === "passed" }));
  const isTold = ({ fullName }: { readonly fullName: string }) =>
    told.some(({ test }) => test.replaceAll(" > ", " ") === fullName);
  const unheard = [
    ...tests.filter((test) => test.status === "failed" && !isTold(test)).map(({ fullName }) => fullName),
    // A file that broke before or after its tests has none that failed.
    ...files
      .filter((file) => file.status === "failed" && file.assertionResults.every((test) => test.status !== "failed"))
      .map(({ name }) => name),
  ];
  const skipped = tests.filter(({ status }) => status !== "passed" && status !== "failed").length;
  const failed = lines.filter(({ held }) => !held).length + unheard.length;
  const uncounted = tests.filter((test) => test.status === "passed" && !isTold(test)).length;
  const hasFailed = failed > 0 || lines.length + uncounted === 0 || status !== 0 || report === null;
  const kills = lines
    .filter(({ held, fault }) => held && fault.startsWith("kill"))
    .reduce((sum, { tried }) => sum + tried, 0);
  const end = hasFailed
    ? `FAILED: ${failed} of ${lines.length + unheard.length} did not hold${report === null ? ", and the run ended without a report" : ""}. What was lost or changed in silence is not known.`
    : `${lines.length} faults held, with ${kills} kills among them: no acknowledged entry lost, no silent change.`;
  return {
    lines: [
      row("", "tried", "fault", "against"),
      ...lines.map(({ held, tried, fault, against }) => row(held ? "held" : "failed", tried, fault, against)),
      ...unheard.map((name) => row("failed", "", name, "")),
      "",
      ...(uncounted > 0 ? [`${uncounted} tests that count nothing passed.`] : []),
      ...(skipped > 0 ? [`${skipped} tests were not tried here.`] : []),
      end,
    ],
    hasFailed,
  };
}
