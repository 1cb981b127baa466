import { describe, expect, it } from "vitest";
import { apartStory } from "../../tests/journals/apart-story.ts";
import { fileStory } from "../../tests/journals/file-story.ts";
import { fork } from "../../tests/journals/fork.ts";
import { membersStory } from "../../tests/journals/members-kinds.ts";
import { writer } from "../../tests/journals/writer.ts";
import { type Entry, headerHash } from "../journal/index.ts";
import { fold } from "./fold.ts";
import { type Decision, decisionOn, type KeptApart, settlingDrafts, takingInTrouble } from "./kept-apart.ts";

const [first, second] = fork();
const keptOf = (entry: Entry, more: Partial<KeptApart> = {}): KeptApart => ({
  ...{ hash: headerHash(entry.header), entry, why: "number-taken", standing: first },
  ...{ cameInAs: null, earlierCameInAs: [], withdrawnBy: null, isIdTaken: false, settlements: [] },
  ...more,
});
const settle = (kept: KeptApart, decision: Decision = "taken-in", reason = "read twice") =>
  settlingDrafts(kept, { decision, reason, programme: "main", on: "2026-03-20" });
const codes = (kept: KeptApart, decision: Decision = "taken-in", reason = "read twice") => {
  const drafts = settle(kept, decision, reason);
  return drafts.ok ? [] : drafts.problems.map(({ code }) => code);
};
const [erasure] = writer().write({
  ...{ kind: "content-erased", at: "2026-03-20", about: ["case-1"] },
  data: { entries: [second.header.id], reason: "asked for" },
});
const settled = Object.values(fold(apartStory()).programmes.main?.settlements ?? {}).map((kept) => kept.candidates);
const one = (decision: Decision) =>
  settled.find((all) => all.length === 1 && all[0]?.value.decision === decision) ?? expect.fail("none settled so");
const two = settled.find((all) => all.length === 2) ?? expect.fail("nobody differs");

describe("settling what is kept apart", () => {
  it("[CB50] takes in the same words, time and ids, and what it replaced, and that entry itself", () => {
    const earlier = "0190c0de-0000-7000-8000-00000000000a";
    const correcting = { ...second, header: { ...second.header, replaces: [earlier] } };
    const { kind, at, about, id, device, seq } = second.header;
    expect(settle(keptOf(correcting))).toMatchObject({
      ok: true,
      value: [
        { kind, at, about, replaces: [earlier, id], data: second.body?.data },
        {
          ...{ kind: "kept-apart-settled", at: "2026-03-20", about: ["main"], replaces: [] },
          data: { entry: id, device, seq, decision: "taken-in", reason: "read twice" },
        },
      ],
    });
  });

  it("[CB50] leaves out by the settlement alone, and names no id that an entry has", () => {
    expect(settle(keptOf(second), "left-out")).toMatchObject({ value: [{ data: { decision: "left-out" } }] });
    expect(settle(keptOf(second, { isIdTaken: true }))).toMatchObject({ value: [{ replaces: [] }, {}] });
  });

  it("[CB51] settled so already, nothing is written; otherwise, what stood is replaced", () => {
    expect(settle(keptOf(second, { settlements: one("taken-in") }))).toMatchObject({ value: [] });
    const changed = settle(keptOf(second, { settlements: one("left-out") }));
    expect(changed).toMatchObject({ value: [{ kind: "bee-read" }, { replaces: [one("left-out")[0]?.entry] }] });
    expect(settle(keptOf(second, { withdrawnBy: first.header.id }))).toMatchObject({ value: [{ data: {} }] });
    const judged = settle(keptOf(second, { settlements: two }), "left-out");
    expect(judged).toMatchObject({ value: [{ replaces: two.map(({ entry }) => entry) }] });
    expect([decisionOn(one("left-out")), decisionOn(two), decisionOn([])]).toEqual(["left-out", null, null]);
  });

  it("[CB51] what was taken in is not left out by a word: its entry is withdrawn first", () => {
    const cameInAs = "0190c0de-0000-7000-8000-00000000000b";
    expect(codes(keptOf(second, { settlements: one("taken-in"), cameInAs }), "left-out")).toEqual(["apart-came-in"]);
    expect(settle(keptOf(second, { cameInAs }), "left-out")).toMatchObject({ value: [{}] });
    expect(settle(keptOf(second, { cameInAs }))).toMatchObject({ value: [{ kind: "kept-apart-settled" }] });
  });

  const header = (more: Partial<Entry["header"]>): Entry => ({ ...second, header: { ...second.header, ...more } });
  const changed = { ...second, body: { salt: "0".repeat(32), data: second.body?.data ?? {} } };
  const misfit = { ...second, body: { salt: "0".repeat(32), data: { bee: "many" } } };
  it.each([
    ["apart-of-newer-version", header({ kind: "queen-marked" })],
    ["apart-of-newer-version", header({ schema: 99 })],
    ["apart-without-body", { ...second, body: null }],
    ["apart-does-not-fit", misfit],
    ["apart-changed", changed],
    ["apart-of-service", membersStory()[0] ?? second],
    ["apart-erases", erasure ?? second],
  ])("[CB52] %s: not taken in, in words, and can be left out", (code, entry) => {
    expect(codes(keptOf(entry))).toEqual([code]);
    expect(takingInTrouble(keptOf(entry))?.code).toBe(code);
    expect(codes(keptOf(entry), "left-out")).toEqual([]);
  });

  it("[CB52] [CB55] a reason is needed, and what names a file is not taken in: it opens for whoever sent it alone", () => {
    expect(codes(keptOf(second), "left-out", "  ")).toEqual(["apart-no-reason"]);
    const attached = fileStory().filter((entry) => entry.header.kind === "file-attached");
    expect(attached.length).toBeGreaterThan(0);
    for (const entry of attached) expect(takingInTrouble(keptOf(entry))?.code).toBe("apart-names-file");
    expect(takingInTrouble(keptOf(second))).toBeNull();
  });
});
