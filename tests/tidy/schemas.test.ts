/** docs/schemas is in step with the code, and the façade's label record is the journal's. */
import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import addFormats from "ajv-formats";
import { expect, it } from "vitest";
import * as z from "zod";
import { schemaFiles } from "../../scripts/schemas.ts";
import { kinds } from "../../src/journal/index.ts";
import { labelRecord, verbs } from "../../src/reasoning/index.ts";

const folder = "docs/schemas";

it("docs/schemas holds what the code says: `npm run knowledge` writes it", () => {
  const files = schemaFiles();
  expect(readdirSync(folder).sort()).toEqual([...files.keys()]);
  for (const [name, text] of files) expect(readFileSync(`${folder}/${name}`, "utf8"), name).toBe(text);
});

it("every schema is a JSON Schema of draft 2020-12, and each verb's example fits its own", () => {
  const ajv = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true });
  addFormats.default(ajv);
  for (const [name, text] of schemaFiles()) expect(() => ajv.compile(JSON.parse(text)), name).not.toThrow();
  for (const verb of verbs) {
    const fits = ajv.compile(verb.inputShape);
    expect(fits(verb.example), `${verb.name}: ${ajv.errorsText(fits.errors)}`).toBe(true);
  }
});

it("the label record that verbs take is the label record that the journal keeps", () => {
  const bare = (schema: z.ZodType) =>
    JSON.parse(
      JSON.stringify(z.toJSONSchema(schema, { io: "input" }), (key, value) =>
        ["description", "format"].includes(key) ? undefined : value,
      ),
    );
  expect(bare(labelRecord)).toEqual(bare(kinds["label-record-loaded"].body));
});
