/**
 * Writes the journal of every kind of a case as a golden file, named by the newest schema of any kind, that of a
 * programme's own evidence, of its members, of a lifted stop, of attached files and of entries kept apart, each named by the newest schema of
 * its kinds.
 * A file that is there stays: it shows for good that what a past version wrote is still read.
 */
import { writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { encodeJournal, kinds } from "../src/journal/index.ts";
import { apartStory } from "../tests/journals/apart-story.ts";
import { everyKind } from "../tests/journals/every-kind.ts";
import { fileStory } from "../tests/journals/file-story.ts";
import { membersStory } from "../tests/journals/members-kinds.ts";
import { programmeStory } from "../tests/journals/programme-kinds.ts";
import { stopStory } from "../tests/journals/stop-story.ts";

const newest = Math.max(...Object.values(kinds).map((kind) => kind.schema));
const newestOfProgramme = Math.max(kinds["evidence-changed"].schema, kinds["reasoning-set"].schema);
const folder = path.join(path.dirname(fileURLToPath(import.meta.url)), "..", "tests", "golden", "journals");

for (const [name, entries] of [
  [`schema-${newest}.jsonl`, everyKind()],
  [`programme-${newestOfProgramme}.jsonl`, programmeStory()],
  [`stop-${kinds["stop-lifted"].schema}.jsonl`, stopStory()],
  [`file-${kinds["file-attached"].schema}.jsonl`, fileStory()],
  [`members-${kinds["access-noted"].schema}.jsonl`, membersStory()],
  [`apart-${kinds["kept-apart-settled"].schema}.jsonl`, apartStory()],
] as const) {
  const file = path.join(folder, name);
  try {
    writeFileSync(file, encodeJournal(entries), { flag: "wx" });
    process.stderr.write(`written: ${path.relative(process.cwd(), file)}\n`);
  } catch (trouble) {
    if ((trouble as NodeJS.ErrnoException).code !== "EEXIST") throw trouble;
    process.stderr.write(`${path.relative(process.cwd(), file)} is there and stays as it is.\n`);
    process.exitCode = 1;
  }
}
