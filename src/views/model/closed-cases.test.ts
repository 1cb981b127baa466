/** The closed cases of a casebook: what was known before the confirming result, and what the programme then uses. */
import { describe, expect, it } from "vitest";
import { demonstrationCasebook } from "../../../tests/casebook-of.ts";
import { changed, programmeDrafts, set } from "../../../tests/journals/programme-kinds.ts";
import { writer } from "../../../tests/journals/writer.ts";
import { type Casebook, fold } from "../../casebook/index.ts";
import type { EntryDraft } from "../../journal/index.ts";
import { closedCases, inUseOf, pastCases } from "./index.ts";

const on = "2026-03-09";
const opening: readonly EntryDraft[] = [
  {
    kind: "apiary-registered",
    at: on,
    about: ["apiary-1"],
    data: { code: "HO", name: "Hollow Meadow", place: "Invented County", latitude: 45.2, longitude: -93.1 },
  },
  ...["colony-1", "colony-2"].map(
    (colony): EntryDraft => ({
      kind: "colony-registered",
      at: on,
      about: ["apiary-1", colony],
      data: { code: colony, hiveType: "ten-frame" },
    }),
  ),
  {
    kind: "case-opened",
    at: on,
    about: ["case-1", "apiary-1"],
    data: { code: "2026-014", openedOn: on, question: "Why?", colonies: ["colony-1", "colony-2"] },
  },
];
const finding = (colony: string, id: string, state: "present" | "absent"): EntryDraft => ({
  kind: "finding-recorded",
  at: on,
  about: ["case-1", colony],
  data: { colony, finding: id, state, on },
});
const dissection = (colony: string, positive: number): EntryDraft => ({
  kind: "test-result-recorded",
  at: on,
  about: ["case-1", colony],
  data: { colony, test: "tracheal-dissection", on, positive, examined: 50 },
});
const wash: EntryDraft = {
  kind: "test-result-recorded",
  at: on,
  about: ["case-1", "colony-1"],
  data: { colony: "colony-1", test: "varroa-wash", on, mites: 2, bees: 300 },
};
const closing = (confirmedCauses: readonly string[], confirmedBy?: string): EntryDraft => ({
  kind: "case-closed",
  at: "2026-03-20",
  about: ["case-1"],
  data: {
    ...{ on: "2026-03-20", outcome: "answered", confirmedCauses: [...confirmedCauses] },
    ...(confirmedBy === undefined ? {} : { confirmedBy }),
  },
});
const told = (...drafts: readonly EntryDraft[]): Casebook => fold(writer().write(...opening, ...drafts));
const only = (casebook: Casebook) => {
  const [one, ...more] = closedCases(casebook);
  if (one === undefined || more.length > 0) throw new Error("not one closed case");
  return one;
};

describe("closed cases of a casebook", () => {
  it("[DX185] before the confirming result stands what was written down before it, and no more", () => {
    const one = only(
      told(
        finding("colony-1", "crawlers", "present"),
        wash,
        dissection("colony-1", 17),
        finding("colony-1", "k_wing", "present"),
        closing(["tracheal_mites"]),
      ),
    );
    expect(one.whole.findings).toEqual({ crawlers: "present", k_wing: "present" });
    expect(one.whole.tests).toHaveLength(2);
    expect(one.before?.findings).toEqual({ crawlers: "present" });
    expect(one.before?.tests?.map(({ test }) => test)).toEqual(["varroa-wash"]);
  });

  it("[DX185] a weak result before the confirming one is known; without a confirming one all before the closing is", () => {
    const weak = only(told(dissection("colony-1", 1), dissection("colony-1", 20), closing(["tracheal_mites"])));
    expect(weak.before?.tests?.map(({ positive }) => positive)).toEqual([1]);
    const person = only(told(finding("colony-1", "crawlers", "present"), wash, closing(["queenless"], "inspector 2")));
    expect(person.before).toEqual(person.whole);
  });

  it("[DX185] what is said of the region once the laboratory has found something is not in", () => {
    const region = (acarapisWoodi: "found" | "unknown"): EntryDraft => ({
      ...{ kind: "region-recorded", at: on, about: ["apiary-1"] },
      data: {
        ...{ varroa: "present", acarapisWoodi, smallHiveBeetle: "absent", tropilaelaps: "absent", vespa: "absent" },
        source: "invented",
      },
    });
    const seen = finding("colony-1", "crawlers", "present");
    const after = told(seen, dissection("colony-1", 17), region("found"), closing(["tracheal_mites"]));
    expect(only(after).whole.region).toMatchObject({ acarapisWoodi: "found" });
    expect(only(after).before?.region).toBeUndefined();
    expect(inUseOf(after).experience.counts.priors.tracheal_mites).toBeUndefined();
    const before = told(region("found"), seen, dissection("colony-1", 17), closing(["tracheal_mites"]));
    expect(only(before).before?.region).toMatchObject({ acarapisWoodi: "found" });
    expect(inUseOf(before).experience.counts.priors.tracheal_mites).toEqual({ spring: { present: 1, looked: 1 } });
  });

  it("[DX185] nothing before the confirming result is null", () => {
    expect(only(told(dissection("colony-1", 17), closing(["tracheal_mites"]))).before).toBeNull();
  });

  it("[DX186] is told of the colony in which a result confirms the cause, and asked of the one with most signs", () => {
    const one = only(
      told(
        finding("colony-2", "crawlers", "present"),
        finding("colony-1", "crawlers", "absent"),
        dissection("colony-1", 17),
        closing(["tracheal_mites"]),
      ),
    );
    // The mites were in the colony without crawlers: that is what the case teaches.
    expect(one.whole.findings).toEqual({ crawlers: "absent" });
    expect(one.before?.findings).toEqual({ crawlers: "present" });
    expect(one.results).toMatchObject([{ test: "tracheal-dissection", positive: 17 }]);
    expect(inUseOf(told(dissection("colony-1", 17), closing(["tracheal_mites"]))).experience.refused).toEqual([]);
  });

  it("[DX186] is told of the colony with most signs where a person or a result of the apiary confirms", () => {
    const seen = [finding("colony-2", "crawlers", "present"), finding("colony-1", "crawlers", "absent")];
    const whole = { ...dissection("colony-1", 17), about: ["case-1"] } as EntryDraft;
    const pooled = { ...whole, data: { ...whole.data, colony: null } } as EntryDraft;
    for (const casebook of [
      told(...seen, closing(["tracheal_mites"], "inspector 2")),
      told(...seen, pooled, closing(["tracheal_mites"])),
      told(...seen, dissection("colony-1", 1), closing(["tracheal_mites"], "inspector 2")),
    ])
      expect(only(casebook).whole.findings).toEqual({ crawlers: "present" });
  });

  it("[DX187] a cause that nothing confirms is refused; a withdrawn closing is no closed case", () => {
    const hearsay = inUseOf(told(finding("colony-1", "crawlers", "present"), closing(["queenless"])));
    expect(hearsay.experience.lessons).toEqual([]);
    expect(hearsay.problems).toMatchObject([{ code: "cause-not-confirmed", slots: { case: "case-1" } }]);
    const device = writer();
    const entries = device.write(...opening, closing(["queenless"], "inspector 2"));
    const last = entries.at(-1)?.header.id ?? "";
    const back = device.write({
      kind: "entry-withdrawn",
      at: on,
      about: ["case-1"],
      replaces: [last],
      data: { reason: "too early" },
    });
    expect(closedCases(fold(entries))).toHaveLength(1);
    expect(closedCases(fold([...entries, ...back]))).toEqual([]);
  });

  it("[DX187] of two closings side by side neither counts, and it is said", () => {
    const twice = inUseOf(told(closing(["queenless"], "inspector 2"), closing(["robbing"], "inspector 3")));
    expect(twice.experience.lessons).toEqual([]);
    expect(twice.problems).toMatchObject([{ code: "closing-in-conflict", slots: { case: "case-1" } }]);
  });

  it("[DX187] the evidence in use has the changes, and the counts where the settings say so", () => {
    const acts = [finding("colony-1", "roar_agitated", "present"), closing(["queenless"], "inspector 2")];
    const prior = changed({ what: "prior", condition: "robbing", season: "autumn", rate: 0.09 });
    const off = inUseOf(told(...acts, prior));
    expect(off.evidence.priors.robbing?.autumn.value).toBe(0.09);
    expect(off.evidence.frequencies.queenless?.roar_agitated?.seen).toBeNull();
    expect(off.experience.counts.frequencies.queenless?.roar_agitated).toEqual({ present: 1, looked: 1 });
    const use = { frequencies: true, healthyRates: false, priors: false, strength: 1 };
    const learns = inUseOf(told(...acts, prior, set({ experience: use })));
    expect(learns.evidence.frequencies.queenless?.roar_agitated).toMatchObject({
      seen: { present: 1, looked: 1 },
      published: 0.65,
    });
  });

  it("[DX188] an own finding is put to the differential once it is in the evidence", () => {
    const seen = finding("colony-1", "own_water_line", "present");
    expect(pastCases(told(seen)).map(({ colony }) => colony)).toEqual(["colony-1"]);
    expect(pastCases(told(seen, finding("colony-2", "crawlers", "absent"))).map(({ colony }) => colony)).toEqual([
      "colony-1",
      "colony-2",
    ]);
    expect(pastCases(told(seen))[0]?.input.findings).toEqual({});
    expect(pastCases(told(seen, ...programmeDrafts))[0]?.input.findings).toEqual({ own_water_line: "present" });
  });

  it("[DX187] reads the demonstration without trouble", () => {
    const casebook = demonstrationCasebook();
    const closed = closedCases(casebook);
    expect(closed.length).toBeGreaterThan(0);
    const { experience } = inUseOf(casebook);
    expect(experience.lessons.length + experience.refused.length).toBe(closed.length);
  });
});
