/**
 * Tries every fault at full count and prints what was tried as a table: `npm run faults`, `npm run faults -- --share 0.1`
 * for a tenth of it, `npm run faults -- --minutes 5` for at most so long a fault, `npm run faults -- killed` for the files
 * whose name begins so.
 */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Told } from "../tests/faults/count.ts";
import { faultsTable, type RunReport } from "./faults-table.ts";

const args = process.argv.slice(2);
/** Takes an option and its number out of the words. */
function optionOf(name: string): string | undefined {
  const at = args.indexOf(name);
  return at < 0 ? undefined : (args.splice(at, 2)[1] ?? "");
}
const given = args.join(" ");
const [share = "1", minutes = "1e9"] = [optionOf("--share"), optionOf("--minutes")];
const isFit = Number(share) > 0 && Number(share) <= 1 && Number(minutes) > 0;
if (!isFit || args.some((word) => word.startsWith("-"))) {
  process.stderr.write(
    `Expected: npm run faults -- [--share ABOVE-0-TO-1] [--minutes NUMBER] [WORD …]; got "${given}".\n`,
  );
  process.exit(2);
}
const words = args;
const folder = mkdtempSync(path.join(tmpdir(), "skepsis-faults-"));
const [table, report] = [path.join(folder, "tried.jsonl"), path.join(folder, "report.json")];
const vitest = path.join(import.meta.dirname, "..", "node_modules", "vitest", "vitest.mjs");
const files =
  words.length > 0 ? words.map((word) => `tests/faults/${word}`) : ["tests/faults/", "tests/browser/killed-tab"];
const child = spawn(
  process.execPath,
  // A file at a time: what is killed and cut must not wait for the processor.
  [
    vitest,
    "run",
    "--project",
    "unit",
    "--project",
    "postgres",
    "--project",
    "built",
    "--testTimeout=36000000",
    "--maxWorkers=1",
    "--reporter=default",
    "--reporter=json",
    `--outputFile.json=${report}`,
    ...files,
  ],
  {
    stdio: ["ignore", "inherit", "inherit"],
    env: { ...process.env, SKEPSIS_FAULTS: table, SKEPSIS_FAULTS_SHARE: share, SKEPSIS_FAULTS_MINUTES: minutes },
  },
);
const [status] = await once(child, "exit");
const told = existsSync(table)
  ? readFileSync(table, "utf8")
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line) as Told)
  : [];
const ran = existsSync(report) ? (JSON.parse(readFileSync(report, "utf8")) as RunReport) : null;
const { lines, hasFailed } = faultsTable(told, ran, typeof status === "number" ? status : null);
console.log(`\n${lines.join("\n")}`);
process.exit(hasFailed ? (status as number | null) || 1 : 0);
