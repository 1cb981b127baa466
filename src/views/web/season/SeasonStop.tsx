/** What stops the apiary of a colony, at the head of its season. Loaded only where something does. */
import type { CaseState } from "../../../casebook/index.ts";
import { stopNotices } from "../../model/index.ts";
import { StopList } from "../case/StopBox.tsx";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";

export default function SeasonStop({ state }: { readonly state: CaseState }) {
  const { casebook } = useCasebook();
  return (
    <div className="stop-first">
      <StopList notices={stopNotices(casebook, state, words)} />
    </div>
  );
}
