/** Cases: what waits on whom, overdue first. */
import { Answer } from "../parts/Answer.tsx";
import { words } from "../words.ts";

export default function CasesPage() {
  return (
    <main id="page" className="plain">
      <Answer text={words.cases.none} />
    </main>
  );
}
