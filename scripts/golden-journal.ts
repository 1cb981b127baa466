/**
 * Writes the journal of every kind as a golden file, named by the newest schema of any kind.
 * A file that is there stays: it shows for good that what a past version wrote is still read.
 */
import { writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { encodeJournal, kinds } from "../src/journal/index.ts";
import { everyKind } from "../tests/journals/every-kind.ts";

const newest = Math.max(...Object.values(kinds).map((kind) => kind.schema));
const folder = path.join(path.dirname(fileURLToPath(import.meta.url)), "..", "tests", "golden", "journals");
const file = path.join(folder, `schema-${newest}.jsonl`);

try {
  writeFileSync(file, encodeJournal(everyKind()), { flag: "wx" });
  process.stderr.write(`written: ${path.relative(process.cwd(), file)}\n`);
} catch (trouble) {
  if ((trouble as NodeJS.ErrnoException).code !== "EEXIST") throw trouble;
  process.stderr.write(`${path.relative(process.cwd(), file)} is there and stays as it is.\n`);
  process.exitCode = 1;
}
