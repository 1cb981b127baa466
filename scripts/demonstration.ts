/** Writes examples/demonstration: an invented valley with a year of visits, samples, counts, plans and outcomes. */
import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { encodeJournal } from "../src/journal/index.ts";
import { writeDwindle, writeNewCall, writeRopyThread, writeStarvedColony } from "./demonstration/other-cases.ts";
import { writePlaces } from "./demonstration/places.ts";
import { writeWithenBank } from "./demonstration/withen-bank.ts";
import { openWriter } from "./demonstration/writer.ts";

/** The demonstration journal as text; the same seed gives the same bytes. */
export function demonstrationJournal(seed = 1921): string {
  const writer = openWriter(seed);
  const { withen, sedge, garth } = writePlaces(writer);
  writeStarvedColony(writer, sedge);
  writeWithenBank(writer, withen);
  writeRopyThread(writer, garth);
  writeDwindle(writer, sedge);
  writeNewCall(writer, garth);
  return encodeJournal(writer.entries);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const folder = path.join(path.dirname(path.dirname(fileURLToPath(import.meta.url))), "examples", "demonstration");
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, "journal.jsonl"), demonstrationJournal());
}
