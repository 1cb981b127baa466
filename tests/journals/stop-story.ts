/** An invented case that stops, told in entries: a thread that ropes, a report, a lift, and such a thread again. */
import type { Entry, EntryDraft } from "../../src/journal/index.ts";
import { writer } from "./writer.ts";

const roped = (colony: string, on: string): EntryDraft => ({
  kind: "finding-recorded",
  at: on,
  about: ["case-1", colony],
  data: { colony, finding: "ropy_thread", state: "present", on },
});

/** The whole story. */
export function stopStory(): readonly Entry[] {
  const office = writer({ device: "office-1", author: "Office", from: "2026-05-04T08:00:00.000Z" });
  const opened = office.write({
    kind: "case-opened",
    at: "2026-05-04",
    about: ["case-1", "apiary-1"],
    data: {
      ...{ code: "2026-021", openedOn: "2026-05-04", question: "Does it rope?", waitsOn: "inspector 1" },
      ...{ due: "2026-05-05", colonies: [] },
    },
  });
  const seen = office.write(roped("colony-1", "2026-05-04"));
  const answers = seen.map(({ header }) => header.id);
  const reported = office.write({
    kind: "stop-reported",
    at: "2026-05-04",
    about: ["case-1"],
    data: { toldWhom: "competent authority", on: "2026-05-04", due: "2026-05-11", reference: "B-12", answers },
  });
  const lifted = office.write({
    kind: "stop-lifted",
    at: "2026-05-11",
    about: ["case-1", "rope-american-foulbrood"],
    data: {
      ...{ stop: "rope-american-foulbrood", role: "reference-laboratory", liftedBy: "laboratory 1" },
      ...{ laboratoryReference: "L-26-7", on: "2026-05-11", answers },
    },
  });
  return [...opened, ...seen, ...reported, ...lifted, ...office.write(roped("colony-2", "2026-05-18"))];
}
