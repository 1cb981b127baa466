/** What is on record of an apiary: what was taken back no longer stands, and nothing else goes with it. */
import { expect, it } from "vitest";
import { casebookOf } from "../../../tests/casebook-of.ts";
import type { EntryDraft } from "../../journal/index.ts";
import { apiaryView, takeBackDraft } from "./index.ts";

const today = "2026-03-09";
const drafts: readonly EntryDraft[] = [
  { kind: "apiary-registered", at: today, about: ["ap"], data: { code: "QH", name: "Quillhaven", place: "Quill" } },
  {
    kind: "flow-recorded",
    at: today,
    about: ["ap", "f1"],
    data: { name: "lime", from: "2026-06-20", to: "2026-07-10" },
  },
  {
    kind: "flow-recorded",
    at: today,
    about: ["ap", "f2"],
    data: { name: "clover", from: "2026-05-20", to: "2026-07-30" },
  },
  {
    kind: "supers-recorded",
    at: today,
    about: ["ap", "s1"],
    data: { on: "2026-05-01", off: null, colonies: [] },
  },
];
const view = (all: readonly EntryDraft[]) => apiaryView(casebookOf(all), "ap") ?? expect.fail("no apiary");

it("a flow or supers that were written down wrongly are taken back; the others stay", () => {
  const before = view(drafts);
  const [clover] = before.flows;
  const [supers] = before.supers;
  if (!clover || !supers) return expect.fail("nothing listed");
  const back = { reason: "a slip", today };
  const after = view([...drafts, takeBackDraft("ap", clover, back), takeBackDraft("ap", supers, back)]);
  expect(after.flows.map((flow) => flow.value.name)).toEqual(["lime"]);
  expect(after.supers).toEqual([]);
});
