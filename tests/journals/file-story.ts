/** An invented case with a photo of a bee and a spoken note: files that are small, and pictures of nothing. */
import { createHash } from "node:crypto";
import type { Entry, EntryDraft } from "../../src/journal/index.ts";
import { writer } from "./writer.ts";

/** A grey picture of one dot, as a JPEG without tags. */
export const photo = new Uint8Array(
  Buffer.from(
    "/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAAMCAgICAgMCAgIDAwMDBAYEBAQEBAgGBgUGCQgKCgkICQkKDA8MCgsOCwkJDRENDg8QEBEQCgwSExIQEw8QEBD/wAALCAABAAEBAREA/8QAFAABAAAAAAAAAAAAAAAAAAAACf/EABQQAQAAAAAAAAAAAAAAAAAAAAD/2gAIAQEAAD8AVN//2Q==",
    "base64",
  ),
);

/** Begins as sound in a WebM does, and goes on with bytes of no meaning. */
export const voice = Uint8Array.from({ length: 3000 }, (_, index) =>
  index < 4 ? ([0x1a, 0x45, 0xdf, 0xa3][index] ?? 0) : (index * 7 + (index >> 5)) % 256,
);

export const sha256Of = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

type Attached = Extract<EntryDraft, { kind: "file-attached" }>["data"];

/** A draft that names a file of a colony of a case. */
export const attachedDraft = (
  bytes: Uint8Array,
  mediaType: Attached["mediaType"],
  { root = "case-1", colony = "colony-1", ...more }: Partial<Attached> & { readonly root?: string } = {},
): EntryDraft => ({
  kind: "file-attached",
  at: "2026-05-04T09:30:00Z",
  about: colony === null ? [root] : [root, colony],
  data: { sha256: sha256Of(bytes), mediaType, bytes: bytes.length, colony, takenOn: "2026-05-04", ...more },
});

/** The whole story: a case, a photo of a finding, a voice note about the apiary that is withdrawn, another photo. */
export function fileStory(): readonly Entry[] {
  const office = writer({ device: "phone-1", author: "Yard", from: "2026-05-04T08:00:00.000Z" });
  const opened = office.write({
    kind: "case-opened",
    at: "2026-05-04",
    about: ["case-1", "apiary-1"],
    data: { code: "2026-022", openedOn: "2026-05-04", question: "Why do they crawl?", colonies: [] },
  });
  const first = office.write(
    attachedDraft(photo, "image/jpeg", { finding: "k_wing", caption: "Wings apart, seen from above" }),
  );
  const spoken = office.write(attachedDraft(voice, "audio/webm", { colony: null, seconds: 12 }));
  const withdrawn = office.write({
    ...{ kind: "entry-withdrawn", at: "2026-05-04", about: ["case-1"] },
    ...{ replaces: spoken.map(({ header }) => header.id), data: { reason: "spoken by mistake" } },
  });
  const second = office.write(attachedDraft(voice.slice(0, 1500), "audio/webm", { colony: null, seconds: 6 }));
  return [...opened, ...first, ...spoken, ...withdrawn, ...second];
}
