/** One press saves everything on record as a journal file, to keep elsewhere. */
import { encodeJournal } from "../../../journal/index.ts";
import { saveText } from "../parts/save.ts";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";

export function SaveJournal() {
  const { casebook, programme, today, entries } = useCasebook();
  const say = words.shell;
  if (Object.keys(casebook.apiaries).length + Object.keys(casebook.cases).length === 0) return null;
  const save = async () =>
    saveText(`skepsis-${programme}-${today}.jsonl`, "application/jsonl", encodeJournal(await entries()));
  return (
    <button type="button" className="act save-journal" onClick={() => void save()}>
      {say.saveJournal}
      <span className="vh"> {say.saveJournalAs}</span>
    </button>
  );
}
