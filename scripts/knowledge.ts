/** Writes the knowledge for others: docs/knowledge/knowledge.json and docs/knowledge/bibliography.bib. */
import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { bibliography, knowledgeJson } from "../src/knowledge/index.ts";

const folder = path.join(path.dirname(path.dirname(fileURLToPath(import.meta.url))), "docs", "knowledge");
mkdirSync(folder, { recursive: true });
for (const [name, text] of [
  ["knowledge.json", knowledgeJson()],
  ["bibliography.bib", bibliography()],
] as const) {
  writeFileSync(path.join(folder, name), text);
  process.stderr.write(`Wrote docs/knowledge/${name}\n`);
}
