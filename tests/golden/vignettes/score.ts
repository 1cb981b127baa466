/** How the differential does on the vignettes: a line for each, kept beside the first one it was ever given. */
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { differential } from "../../../src/reasoning/index.ts";
import { type Vignette, vignettes } from "./vignettes.ts";

/** One answer: whether it is what the text says, the verdict, the first three causes with their posteriors to two digits. */
export interface Scored {
  readonly hit: boolean;
  readonly verdict: string;
  readonly first: string;
  /** Notices that the text calls for and that stayed away. */
  readonly missingNotices: readonly string[];
}

export interface ScoreFile {
  /** The first answers ever given; never written again. */
  readonly first: Readonly<Record<string, Scored>>;
  readonly now: Readonly<Record<string, Scored>>;
}

const file = path.join(import.meta.dirname, "score.json");
export const kept = (): ScoreFile => JSON.parse(readFileSync(file, "utf8")) as ScoreFile;

/** The answers of this version. */
export const scoreAll = (): Readonly<Record<string, Scored>> =>
  Object.fromEntries(vignettes.map((vignette) => [vignette.id, scored(vignette)]));

function scored({ input, expect, notices }: Vignette): Scored {
  const reply = differential.differential(input as Parameters<typeof differential.differential>[0]);
  if (!reply.ok) throw new Error(reply.problems.map(({ code, field }) => `${field} ${code}`).join(", "));
  const { conditions, verdict, mustNotMiss } = reply.value;
  const named = verdict.kind === "leading" ? [verdict.condition, verdict.group].filter((each) => each !== undefined) : [];
  const hit = {
    leads: () => expect.kind === "leads" && named.some((each) => expect.oneOf.includes(each)),
    "in-first": () =>
      expect.kind === "in-first" &&
      expect.all.every((each) => conditions.slice(0, expect.within).some(({ id }) => id === each)),
    "cannot-tell": () => verdict.kind === "cannot-tell",
  }[expect.kind]();
  return {
    hit,
    verdict: named.length > 0 ? named.join(" ") : "cannot tell",
    first: conditions
      .slice(0, 3)
      .map(({ id, posterior }) => `${id} ${posterior.toFixed(2)}`)
      .join(", "),
    missingNotices: notices.filter((each) => !mustNotMiss.some(({ condition }) => condition === each)),
  };
}

/** The table as text: hit or miss now, the same at first, what was expected, what was said. */
export function tableOf(first: ScoreFile["first"], now: ScoreFile["now"]): string {
  const mark = (each: Scored | undefined) => (each === undefined ? "–" : each.hit ? "hit" : "miss");
  const rows = vignettes.map(({ id, form, expect }) => [
    mark(now[id]),
    mark(first[id]),
    form,
    id,
    expect.kind === "leads" ? expect.oneOf.join("|") : expect.kind === "in-first" ? `first: ${expect.all.join("+")}` : "?",
    now[id]?.verdict ?? "",
    now[id]?.first ?? "",
  ]);
  const columns = [["now", "at first", "form", "vignette", "expected", "verdict", "first three"], ...rows];
  const widths = columns[0]?.map((_, index) => Math.max(...columns.map((row) => row[index]?.length ?? 0))) ?? [];
  return columns.map((row) => row.map((cell, index) => cell.padEnd(widths[index] ?? 0)).join("  ").trimEnd()).join("\n");
}

/** So many of so many, for a few kinds of vignette, and those in which another cause was named. */
function partsOf(scores: Readonly<Record<string, Scored>>): {
  readonly parts: readonly (readonly [string, string])[];
  readonly wrong: readonly string[];
} {
  const part = (says: string, of: (vignette: Vignette) => boolean) => {
    const own = vignettes.filter(of);
    return [says, `${own.filter(({ id }) => scores[id]?.hit).length} of ${own.length}`] as const;
  };
  const wrong = vignettes.filter(({ id, truth, expect }) => {
    const verdict = scores[id]?.verdict ?? "cannot tell";
    if (verdict === "cannot tell") return false;
    return expect.kind === "cannot-tell" || !truth.some((each) => verdict.split(" ").includes(each));
  });
  return {
    parts: [
      part("hits", () => true),
      part("cases", ({ form }) => form === "case"),
      part("descriptions", ({ form }) => form === "description"),
      part("cannot tell, rightly", ({ expect }) => expect.kind === "cannot-tell"),
      ["another cause or group named", `${wrong.length} of ${vignettes.length}`],
    ],
    wrong: wrong.map(({ id }) => id),
  };
}

/** The score in a line. */
export function summaryOf(scores: Readonly<Record<string, Scored>>): string {
  const { parts, wrong } = partsOf(scores);
  return `${parts.map(([says, count]) => `${says} ${count}`).join("; ")}: ${wrong.join(", ")}`;
}

/** The score as the table of the method's page, at first and now. */
export function pageTableOf({ first, now }: ScoreFile): string {
  const later = partsOf(now).parts;
  const rows = partsOf(first).parts.map(([says, count], index) => [says, count, later[index]?.[1] ?? ""] as const);
  const line = (cells: readonly [string, string, string]) =>
    `| ${cells[0].padEnd(28)} | ${cells[1].padStart(8)} | ${cells[2].padStart(8)} |`;
  const rule = `| ${"-".repeat(28)} | ${"-".repeat(7)}: | ${"-".repeat(7)}: |`;
  return [line(["Vignettes", "At first", "Now"]), rule, ...rows.map(line)].join("\n");
}

/** Writes the answers of this version beside the first ones; new vignettes get their first answer here. */
export function writeScore(): void {
  const now = scoreAll();
  let first: ScoreFile["first"] = {};
  try {
    first = kept().first;
  } catch {
    // No score was kept yet.
  }
  const whole: ScoreFile = { first: { ...now, ...first }, now };
  writeFileSync(file, `${JSON.stringify(whole, null, 1)}\n`);
}

if (process.argv[1] === import.meta.filename) writeScore();
