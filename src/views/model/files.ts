/** Photos and voice notes of a case, as a page shows them, and the entries that they become. */
import type { CaseState } from "../../casebook/index.ts";
import type { BodyOf, EntryDraft, MediaType } from "../../journal/index.ts";
import type { Day } from "../../units/index.ts";

/** A photo or a voice note, as it is listed. */
export interface FileView {
  readonly entry: string;
  readonly sha256: string;
  readonly isPhoto: boolean;
  readonly mediaType: MediaType;
  readonly bytes: number;
  /** Null: of the whole apiary. */
  readonly colony: string | null;
  readonly finding: string | null;
  readonly caption: string;
  readonly takenOn: Day;
  readonly seconds: number | null;
  readonly author: string;
}

/** What a file is of. */
export interface FileOf {
  readonly colony: string | null;
  readonly finding: string | null;
}

/** The files of a case, newest first. */
export const filesOf = ({ files }: Pick<CaseState, "files">): readonly FileView[] =>
  Object.values(files)
    .toSorted((one, other) => (newness(one) < newness(other) ? 1 : -1))
    .map(({ entry, author, value }) => ({
      entry,
      author,
      isPhoto: value.mediaType.startsWith("image/"),
      ...{ sha256: value.sha256, mediaType: value.mediaType, bytes: value.bytes, colony: value.colony },
      ...{ finding: value.finding ?? null, caption: value.caption ?? "", takenOn: value.takenOn },
      seconds: value.seconds ?? null,
    }));

const newness = (file: CaseState["files"][string]): string => `${file.value.takenOn} ${file.recordedAt} ${file.entry}`;

/** A file that was taken or recorded on the day `on`. */
export function fileDraft(input: {
  readonly caseId: string;
  readonly file: Pick<BodyOf<"file-attached">, "sha256" | "mediaType" | "bytes" | "seconds">;
  readonly of: FileOf;
  readonly on: Day;
}): EntryDraft {
  const { caseId, file, of, on } = input;
  return {
    kind: "file-attached",
    at: on,
    about: of.colony === null ? [caseId] : [caseId, of.colony],
    data: {
      ...file,
      colony: of.colony,
      ...(of.finding === null ? {} : { finding: of.finding }),
      takenOn: on,
    },
  };
}

/** Other words for what a file shows; none when they are empty. */
export function captionDraft(state: CaseState, entry: string, caption: string): EntryDraft | null {
  const value = state.files[entry]?.value;
  if (!value) return null;
  const { caption: _, ...rest } = value;
  const words = caption.trim();
  return {
    kind: "file-attached",
    at: value.takenOn,
    about: value.colony === null ? [state.id] : [state.id, value.colony],
    replaces: [entry],
    data: words === "" ? rest : { ...rest, caption: words },
  };
}

/** A file that is taken back: shown no more. */
export const fileWithdrawnDraft = (state: CaseState, entry: string, today: Day): EntryDraft => ({
  kind: "entry-withdrawn",
  at: today,
  about: [state.id],
  replaces: [entry],
  data: { reason: "" },
});
