/** An invented programme that settles what its service kept apart: one taken in, one left out, one on which two differ. */
import { type Entry, type EntryDraft, headerHash } from "../../src/journal/index.ts";
import { fork } from "./fork.ts";
import { writer } from "./writer.ts";

/** What a person decided on a kept entry. */
export const settlingOf = (
  { header }: Entry,
  decision: "taken-in" | "left-out",
  reason = "compared with the sheet of the bench",
): EntryDraft => ({
  kind: "kept-apart-settled",
  at: "2026-03-20",
  about: [header.programme],
  data: {
    ...{ hash: headerHash(header), entry: header.id, device: header.device, seq: header.seq },
    ...{ decision, reason },
  },
});

/** The whole story: what stands, the settlements, and the content of the one that was taken in. */
export function apartStory(): readonly Entry[] {
  const [standing, kept] = fork();
  const [, second] = fork("phone-two");
  const [, third] = fork("phone-three");
  const office = writer({ device: "office-1", author: "Office", from: "2026-03-20T08:00:00.000Z" });
  const desk = writer({ device: "desk-2", author: "Desk", from: "2026-03-20T09:00:00.000Z" });
  const { kind, at, about, id } = kept.header;
  const copy = { kind, at, about, replaces: [id], data: kept.body?.data } as unknown as EntryDraft;
  return [
    standing,
    ...office.write(copy, settlingOf(kept, "taken-in"), settlingOf(second, "left-out", "the phone was only tried")),
    ...office.write(settlingOf(third, "taken-in")),
    ...desk.write(settlingOf(third, "left-out", "read twice")),
  ];
}
