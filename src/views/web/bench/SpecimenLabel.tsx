/** The label of the vial on the bench. A blind reading shows its number and nothing that tells the colony. */
import type { BenchView, OpenReading } from "../../model/index.ts";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";

export function SpecimenLabel({
  view,
  reading,
}: {
  readonly view: BenchView;
  readonly reading?: OpenReading | undefined;
}) {
  const say = words.bench;
  const { isDemonstration } = useCasebook();
  const blind = reading?.started.blindNumber;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a label is no fieldset of a form
    <div className="label" role="group" aria-label={say.specimenLabel}>
      <span className="code">{view.label.code}</span>
      {blind ? (
        <span className="place">
          {say.blindBy({ reader: reading.started.reader, number: blind }).replaceAll("**", "")}
        </span>
      ) : (
        <>
          <span className="place">{[view.place, view.colony].filter((each) => each !== "").join(", ")}</span>
          <span className="row">
            <time>{view.received?.takenOn ?? view.label.takenOn ?? ""}</time>
            <span>{view.from}</span>
          </span>
        </>
      )}
      {isDemonstration ? <span className="foot">{say.invented}</span> : null}
    </div>
  );
}
