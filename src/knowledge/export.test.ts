/** The exports in docs/knowledge against the records. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { bibliography, knowledgeJson, knowledgeVersion, sources } from "./index.ts";

const committed = (name: string) => readFileSync(new URL(`../../docs/knowledge/${name}`, import.meta.url), "utf8");

describe("export", () => {
  it("[KN17] knowledge.json is what the records give", () => {
    expect(committed("knowledge.json") === knowledgeJson(), "run npm run knowledge").toBe(true);
    const value = JSON.parse(knowledgeJson());
    expect(value.version).toBe(knowledgeVersion);
    expect(Object.keys(value.conditions).length).toBe(45);
    expect(Object.keys(value.sources).length).toBe(Object.keys(sources).length);
  });

  it("[KN17] bibliography.bib is what the sources give, one entry each, braces in balance", () => {
    const text = bibliography();
    expect(committed("bibliography.bib") === text, "run npm run knowledge").toBe(true);
    expect(text.match(/^@/gm)?.length).toBe(Object.keys(sources).length);
    expect(text.split("{").length).toBe(text.split("}").length);
  });
});
