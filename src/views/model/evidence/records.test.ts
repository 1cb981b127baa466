/** The evidence to browse: nothing is left out, every figure and citation says how it was read. */
import { describe, expect, it } from "vitest";
import { conditionIds, controlIds, findingIds, sources, testIds, thresholds } from "../../../knowledge/index.ts";
import { wholeWordsOf } from "../../words/index.ts";
import { evidenceRecords, searchRecords } from "../index.ts";

const words = wholeWordsOf("en");
const records = evidenceRecords(words);
const of = (kind: string) => records.filter((record) => record.kind === kind).map((record) => record.id);

describe("evidence", () => {
  it("holds every condition, finding, test, control, threshold and source", () => {
    expect(of("condition").sort()).toEqual([...conditionIds].sort());
    expect(of("finding").sort()).toEqual([...findingIds].sort());
    expect(of("test").sort()).toEqual([...testIds].sort());
    expect(of("control").sort()).toEqual([...controlIds].sort());
    expect(of("threshold").sort()).toEqual(Object.keys(thresholds).sort());
    expect(of("source").sort()).toEqual(Object.keys(sources).sort());
  });

  it("a figure from memory says so", () => {
    const autumn = records.find((record) => record.id === "tracheal-act-before-winter");
    expect(autumn?.figures).toEqual([{ says: "10 percent of bees infested", mark: "memory" }]);
    expect(words.evidence.marks.memory).toContain("from memory");
  });

  it("a reported dose says that it is never to be given", () => {
    const menthol = records.find((record) => record.kind === "control" && record.id === "menthol");
    expect(menthol?.figures.map((figure) => figure.says).join(" ")).toContain(
      "50 g per colony (reported, never to give)",
    );
  });

  it("every citation with a source names it; one without says whose it is", () => {
    for (const citation of records.flatMap((record) => record.citations)) {
      if (citation.source !== null) expect(citation.name).not.toBe("");
      else expect(citation.at).not.toBe("");
    }
  });

  it("finds records by any of their words, or by their source, within a kind", () => {
    const found = searchRecords(records, { text: "Danka 1995", kind: "threshold" }).map((record) => record.id);
    expect(found).toContain("tracheal-damage-level");
    expect(searchRecords(records, { text: "tracheal mites", kind: "condition" }).map((record) => record.id)).toContain(
      "tracheal_mites",
    );
    expect(searchRecords(records, { text: "no such thing at all", kind: null })).toEqual([]);
  });
});
