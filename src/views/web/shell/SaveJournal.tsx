/** One press saves everything on record as a journal file, to keep elsewhere. */
import { encodeJournal } from "../../../journal/index.ts";
import { saveFile, saveText } from "../parts/save.ts";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";

export function SaveJournal() {
  const { casebook, programme, today, entries, file } = useCasebook();
  const say = words.shell;
  if (Object.keys(casebook.apiaries).length + Object.keys(casebook.cases).length === 0) return null;
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
