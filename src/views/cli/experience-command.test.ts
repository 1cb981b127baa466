/** Experience on the command line, and a question under a programme's evidence. */
import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { programmeStory, set } from "../../../tests/journals/programme-kinds.ts";
import { writer } from "../../../tests/journals/writer.ts";
import { decodeJournal, type EntryDraft } from "../../journal/index.ts";
import { verbNamed } from "../../reasoning/index.ts";
import { openServerStore } from "../../storage/server.ts";
import { said } from "./test-io.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-cli-"));
const env = { SKEPSIS_DATA: folder };

beforeAll(async () => {
  const main = await openServerStore({ file: path.join(folder, "main.sqlite"), programme: "main" });
  await main.push(programmeStory());
  await main.close();
  const text = readFileSync(path.join(import.meta.dirname, "../../../examples/demonstration/journal.jsonl"), "utf8");
  const journal = decodeJournal(text);
  if (!journal.ok) throw new Error("the demonstration journal cannot be read");
  const programme = journal.value[0]?.header.programme ?? "";
  const store = await openServerStore({ file: path.join(folder, `${programme}.sqlite`), programme });
  await store.push(journal.value);
  await store.close();
});

describe("experience on the command line", () => {
  it("[DX189] prints what closed cases taught, and that there are too few to score", async () => {
    const json = await said(["experience", "--programme", "demonstration", "--json"], { env });
    expect([json.status, json.err]).toEqual([0, ""]);
    const answer = json.json() as {
      closed: number;
      learntFrom: number;
      refused: unknown[];
      score: { withheld: { message: string }[] };
      values: { kind: string; looked: number; inUse: number; start: number }[];
    };
    expect(answer.closed).toBeGreaterThan(0);
    expect(answer.learntFrom + answer.refused.length).toBe(answer.closed);
    expect(answer.score.withheld[0]?.message).toContain("a score needs 10");
    expect(answer.values.length).toBeGreaterThan(0);
    // Nobody said that the demonstration uses its experience.
    for (const { inUse, start } of answer.values) expect(inUse).toBe(start);
    const words = await said(["experience", "--programme", "demonstration"], { env });
    expect(words.out).toMatch(/^\d+ closed, \d+ teach, \d+ refused\./);
    expect(words.out).not.toMatch(/undefined|NaN|\[object/);
  });

  it("[DX189] shows what was learnt beside its start, and how well answers did, once ten cases can be scored", async () => {
    const on = "2026-03-09";
    const use = { frequencies: true, healthyRates: true, priors: true, strength: 1 };
    const drafts: readonly EntryDraft[] = [
      {
        ...{ kind: "apiary-registered", at: on, about: ["apiary-1"] },
        data: { code: "HO", name: "Hollow Meadow", place: "Invented County", latitude: 45.2, longitude: -93.1 },
      },
      ...Array.from({ length: 10 }, (_, at): readonly EntryDraft[] => [
        {
          ...{ kind: "colony-registered", at: on, about: ["apiary-1", `colony-${at}`] },
          data: { code: String(at), hiveType: "ten-frame" },
        },
        {
          ...{ kind: "case-opened", at: on, about: [`case-${at}`, "apiary-1"] },
          data: { code: `2026-01${at}`, openedOn: on, question: "Why?", colonies: [`colony-${at}`] },
        },
        ...(["roar_agitated", "green_hard_mummies"] as const).map(
          (finding): EntryDraft => ({
            ...{ kind: "finding-recorded", at: on, about: [`case-${at}`, `colony-${at}`] },
            data: { colony: `colony-${at}`, finding, state: "present", on },
          }),
        ),
        {
          ...{ kind: "case-closed", at: on, about: [`case-${at}`] },
          data: { on, outcome: "answered", confirmedCauses: ["queenless"], confirmedBy: "inspector 2" },
        },
      ]).flat(),
      set({ experience: use }, "learn"),
    ];
    const office = writer({ device: "d", programme: "learn", author: "a", from: "2026-03-09T08:00:00.000Z" });
    const store = await openServerStore({ file: path.join(folder, "learn.sqlite"), programme: "learn" });
    await store.push(office.write(...drafts));
    await store.close();
    const { out } = await said(["experience", "--programme", "learn"], { env });
    expect(out).toMatch(/frequency +queenless +roar_agitated +0\.65 +0\.65 +10 of 10 +0\.7\d+/);
    expect(out).toMatch(/healthy-rate +spring +green_hard_mummies +\S+ +\S+ +10 of 10/);
    expect(out).toMatch(/prior +queenless +spring +\S+ +\S+ +10 of 10/);
    expect(out).toContain("no random sample");
    expect(out).toContain("colonies that failed of something else");
    expect(out).toContain("10 cases scored, each by what the others taught.");
    expect(out).toMatch(/pairs +stated +observed +low +high/);
  });

  it("[DX189] of a programme without records says so", async () => {
    const none = await said(["experience", "--programme", "nobody", "--json"], { env });
    expect(none.status).toBe(2);
    expect(none.json().problems).toMatchObject([{ field: "--programme" }]);
  });

  it("[DX189] a question under a programme's evidence has its conditions, findings and thresholds", async () => {
    const stdin = JSON.stringify({ season: "spring", findings: {}, ownFindings: { own_water_line: "present" } });
    const own = await said(["differential", "--programme", "main", "--input", "-", "--json"], { stdin, env });
    expect([own.status, own.err]).toEqual([0, ""]);
    const { notices: _, ...answer } = own.json();
    expect(verbNamed("differential")?.output.safeParse(answer).error).toBeUndefined();
    const conditions = answer.conditions as { id: string; posterior: number; low: number }[];
    expect(conditions).toHaveLength(46);
    expect(conditions[0]).toMatchObject({ id: "own_flooded_stand" });
    const plain = await said(["differential", "--input", "-", "--json"], { stdin, env });
    expect(plain.status).toBe(2);
    expect(plain.json().problems).toMatchObject([{ field: "findings.own_water_line" }]);
    const words = await said(["differential", "--programme", "main", "--input", "-"], { stdin, env });
    expect(words.out).toContain("own_flooded_stand");
  });

  it("[DX189] of two settings side by side none counts, and the answer says so", async () => {
    const store = await openServerStore({ file: path.join(folder, "two.sqlite"), programme: "two" });
    await store.push(
      ["office-1", "office-2"].flatMap((device, at) =>
        writer({ device, programme: "two", author: device, from: "2026-04-02T08:00:00.000Z" }).write(
          set({ thresholds: { leading: 0.6 + at / 10 } }, "two"),
        ),
      ),
    );
    await store.close();
    const stdin = JSON.stringify({ season: "spring", findings: { crawlers: "present" } });
    const answer = (
      await said(["differential", "--programme", "two", "--input", "-", "--json"], { stdin, env })
    ).json();
    expect(answer.notices).toMatchObject([{ code: "settings-in-conflict" }]);
  });

  it("[DX189] counts that cannot be are named with their field", async () => {
    const seasons = { winter: {}, spring: {}, summer: {}, autumn: {} };
    const counts = {
      frequencies: { queenless: { crawlers: { present: 5, looked: 2 } } },
      healthy: seasons,
      priors: {},
    };
    const use = { frequencies: true, healthyRates: false, priors: false, strength: 1 };
    const stdin = JSON.stringify({ season: "spring", findings: {}, evidence: { use, counts } });
    const odd = await said(["differential", "--input", "-", "--json"], { stdin, env });
    expect(odd.status).toBe(2);
    expect(odd.json().problems).toMatchObject([{ field: "evidence.counts.frequencies.queenless.crawlers" }]);
  });

  it("[DX189] tells what is added to a question: settings, changes, counts", async () => {
    const { question } = (await said(["experience", "--programme", "main", "--json"], { env })).json();
    expect(question).toMatchObject({
      thresholds: { leading: 0.6 },
      evidence: { use: { frequencies: true, priors: false, strength: 1 }, counts: { frequencies: {} } },
    });
    expect((question as { evidence: { changes: unknown[] } }).evidence.changes).toHaveLength(7);
  });

  it("[DX189] tries changes on past cases and writes nothing", async () => {
    const citation = { source: null, at: "own numbers, invented", read: "judgement" };
    const stdin = JSON.stringify(
      ["winter", "spring", "summer", "autumn"].map((season) => ({
        ...{ change: { what: "prior", condition: "stonebrood", season, rate: 0.99 }, citation, on: "2026-04-02" },
      })),
    );
    const argv = ["experience", "--programme", "demonstration", "--changes", "-"];
    const tried = await said([...argv, "--json"], { stdin, env });
    expect([tried.status, tried.err]).toEqual([0, ""]);
    const { compared, changed } = tried.json() as { compared: number; changed: { after: { likeliest: string } }[] };
    expect(compared).toBeGreaterThan(1);
    expect(changed.some(({ after }) => after.likeliest === "stonebrood")).toBe(true);
    expect((await said(argv, { stdin, env })).out).toContain(`${changed.length} of ${compared} past answers`);
    const after = (await said(["experience", "--programme", "demonstration", "--json"], { env })).json();
    expect(after.question).toMatchObject({ evidence: { changes: [] } });
    const torn = await said([...argv, "--json"], { stdin: '[{"change":{"what":"prior"}}]', env });
    expect(torn.status).toBe(2);
    const text = await said([...argv, "--json"], { stdin: "{", env });
    expect(text.json().problems).toMatchObject([{ field: "--changes" }]);
  });

  it("[DX189] the question's own threshold stands above the programme's", async () => {
    const stdin = JSON.stringify({ season: "spring", findings: {}, ownFindings: { own_water_line: "present" } });
    const verdict = async (leading: string) =>
      (
        await said(["differential", "--programme", "main", "--thresholds.leading", leading, "--input", "-", "--json"], {
          stdin,
          env,
        })
      ).json().verdict;
    expect(await verdict("0.01")).toMatchObject({ kind: "leading", condition: "own_flooded_stand" });
    expect(await verdict("0.99")).toMatchObject({ kind: "cannot-tell" });
  });
});
