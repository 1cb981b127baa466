import { describe, expect, it } from "vitest";
import { attachedDraft, fileStory, photo, sha256Of } from "../../../tests/journals/file-story.ts";
import { writer } from "../../../tests/journals/writer.ts";
import { fold } from "../../casebook/index.ts";
import type { Entry, EntryDraft } from "../../journal/index.ts";
import { captionDraft, fileDraft, filesOf, fileWithdrawnDraft } from "./files.ts";

const phone = writer({ device: "phone-2", from: "2026-05-05T08:00:00.000Z" });
const stateOf = (entries: readonly Entry[]) => fold(entries).cases["case-1"] ?? expect.fail("no case");
const draftOf = (draft: EntryDraft | null): EntryDraft => draft ?? expect.fail("no draft");

describe("photos and voice notes of a case", () => {
  it("are listed newest first, without what was taken back", () => {
    const later = phone.write({ ...attachedDraft(photo, "image/jpeg", { takenOn: "2026-05-05", colony: "colony-2" }) });
    expect(filesOf(stateOf([...fileStory(), ...later]))).toMatchObject([
      { isPhoto: true, colony: "colony-2", finding: null, caption: "", takenOn: "2026-05-05", seconds: null },
      { isPhoto: false, colony: null, seconds: 6, takenOn: "2026-05-04", author: "Yard" },
      { isPhoto: true, colony: "colony-1", finding: "k_wing", caption: "Wings apart, seen from above" },
    ]);
  });

  it("become entries about the colony, or the case alone for the whole apiary", () => {
    const file = { sha256: sha256Of(photo), mediaType: "image/jpeg", bytes: photo.length } as const;
    const of = (colony: string | null, finding: string | null) =>
      fileDraft({ caseId: "case-1", file, of: { colony, finding }, on: "2026-05-05" });
    expect(of("colony-1", "k_wing")).toMatchObject({
      about: ["case-1", "colony-1"],
      data: { ...file, colony: "colony-1", finding: "k_wing", takenOn: "2026-05-05" },
    });
    expect(of(null, null)).toMatchObject({ about: ["case-1"], data: { colony: null } });
    expect(phone.write(of(null, null))).toHaveLength(1);
  });

  it("get other words, or none, and are taken back, by entries that name what they replace", () => {
    const story = fileStory();
    const [first] = filesOf(stateOf(story)).filter(({ isPhoto }) => isPhoto);
    const id = first?.entry ?? "";
    const said = phone.write(draftOf(captionDraft(stateOf(story), id, "  Seen from below ")));
    const worded = stateOf([...story, ...said]);
    expect(filesOf(worded).map(({ caption }) => caption)).toEqual(["Seen from below", ""]);
    const again = phone.write(draftOf(captionDraft(worded, said[0]?.header.id ?? "", " ")));
    const bare = stateOf([...story, ...said, ...again]);
    expect(filesOf(bare).map(({ caption }) => caption)).toEqual(["", ""]);
    const gone = phone.write(fileWithdrawnDraft(bare, again[0]?.header.id ?? "", "2026-05-06"));
    expect(filesOf(stateOf([...story, ...said, ...again, ...gone]))).toHaveLength(1);
    expect(captionDraft(bare, "no-such-entry", "words")).toBeNull();
  });
});
