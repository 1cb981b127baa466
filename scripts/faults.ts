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
import type { Tried } from "../tests/faults/count.ts";

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
const table = path.join(mkdtempSync(path.join(tmpdir(), "skepsis-faults-")), "tried.jsonl");
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
    ...files,
  ],
  {
    stdio: ["ignore", "inherit", "inherit"],
    env: { ...process.env, SKEPSIS_FAULTS: table, SKEPSIS_FAULTS_SHARE: share, SKEPSIS_FAULTS_MINUTES: minutes },
  },
);
const [status] = await once(child, "exit");
const tried = existsSync(table)
  ? readFileSync(table, "utf8")
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line) as Tried)
  : [];
const cell = (text: string | number, width: number) => String(text).padEnd(width);
console.log(`\n${cell("tried", 9)}${cell("lost", 6)}${cell("silent", 8)}${cell("fault", 54)}against`);
for (const each of tried)
  console.log(
    `${cell(each.tried, 9)}${cell(each.lost, 6)}${cell(each.silent, 8)}${cell(each.fault, 54)}${each.against}`,
  );
const kills = tried.filter(({ fault }) => fault.startsWith("kill")).reduce((sum, each) => sum + each.tried, 0);
console.log(
  `\n${kills} kills; ${tried.reduce((sum, each) => sum + each.lost, 0)} acknowledged entries lost; ${tried.reduce((sum, each) => sum + each.silent, 0)} silent changes.`,
);
process.exit(typeof status === "number" ? status : 1);
