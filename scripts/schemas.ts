/** Writes docs/schemas: one JSON Schema for each verb's input and answer, for the label record and for each entry kind. */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import * as z from "zod";
import { kinds } from "../src/journal/index.ts";
import { labelRecord, verbs } from "../src/reasoning/index.ts";

const folder = path.join(path.dirname(path.dirname(fileURLToPath(import.meta.url))), "docs", "schemas");

/** File name and text of every schema, in order of name. */
export function schemaFiles(): ReadonlyMap<string, string> {
  const schemas: readonly (readonly [string, string, object])[] = [
    ...verbs.flatMap(({ name, summary, inputShape, outputShape }) => [
      [`${name}.input`, summary, inputShape] as const,
      [`${name}.output`, `Answer of ${name}.`, outputShape] as const,
    ]),
    ["label-record", "What a printed label allows, typed from it.", z.toJSONSchema(labelRecord, { io: "input" })],
    ...Object.entries(kinds).map(
      ([kind, { root, schema, body }]) =>
        [
          `entry.${kind}`,
          `Body of ${kind}, schema ${schema}, root ${root}.`,
          z.toJSONSchema(body, { io: "input" }),
        ] as const,
    ),
  ];
  const files = schemas.map(([name, title, shape]): [string, string] => [
    `${name}.json`,
    `${JSON.stringify({ title, ...shape }, null, 2)}\n`,
  ]);
  return new Map(files.sort(([a], [b]) => (a < b ? -1 : 1)));
}

function write(): void {
  mkdirSync(folder, { recursive: true });
  const files = schemaFiles();
  for (const name of readdirSync(folder)) if (!files.has(name)) rmSync(path.join(folder, name));
  for (const [name, text] of files) writeFileSync(path.join(folder, name), text);
  process.stderr.write(`${files.size} schemas written to docs/schemas.\n`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) write();
