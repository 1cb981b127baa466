/** One press saves everything on record as a journal file, to keep elsewhere. */
import type { Casebook } from "../../../casebook/index.ts";
import { encodeJournal } from "../../../journal/index.ts";
import { saveFile, saveText } from "../parts/save.ts";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";

/** Whoever reads at the bench may have vials alone, and another nothing but entries that are not read here. */
const holdsEntries = (casebook: Casebook): boolean =>
  Object.values(casebook).some((each) => Object.keys(each).length > 0);

export function SaveJournal() {
  const { casebook, keeping, programme, today, entries, file } = useCasebook();
  const say = words.shell;
  if (keeping.savedAt === null && !holdsEntries(casebook)) return null;
  const save = async () => {
    const all = await entries();
    const name = `skepsis-${programme}-${today}`;
    if (!all.some(({ header }) => header.kind === "file-attached"))
      return saveText(`${name}.jsonl`, "application/jsonl", encodeJournal(all));
    // Photos and voice notes that are on this device go along, in an archive.
    const { filesNamedBy, savedCopy } = await import("../../../transfer/index.ts");
    const files = [];
    for (const sha256 of filesNamedBy(all)) files.push(...[(await file(sha256)) ?? []].flat());
    return saveFile(`${name}.zip`, new Blob([savedCopy(encodeJournal(all), files)], { type: "application/zip" }));
  };
  return (
    <button type="button" className="act save-journal" onClick={() => void save()}>
      {say.saveJournal}
      <span className="vh"> {say.saveJournalAs}</span>
    </button>
  );
}
