/** "Saved here 16:42 · 3 entries not yet sent", and in words what stands in the way of keeping or sending. */
import { Link, useLocation } from "wouter";
import { useSession } from "../account/SessionProvider.tsx";
import { sentence } from "../parts/Form.tsx";
import { useCasebook } from "../store/context.ts";
import { localTime } from "../store/today.ts";
import { words } from "../words.ts";
import { SaveJournal } from "./SaveJournal.tsx";

export function Kept() {
  const { keeping } = useCasebook();
  const say = words.shell;
  const sent = say.unsent({ entries: keeping.unsent, files: keeping.unsentFiles, reached: keeping.reached });
  return (
    <span role="status">
      <Link className="act kept-line" href="/records">
        {keeping.savedAt
          ? say.keptLine({ saved: say.savedHere({ time: localTime(keeping.savedAt) }), sent })
          : keeping.unsent + keeping.unsentFiles > 0
            ? sent
            : say.nothingYet}
      </Link>
    </span>
  );
}

/** What was just entered and is not kept: on every page, also those without a top line. */
export function NotKept() {
  const { keeping } = useCasebook();
  return keeping.notKept === null ? null : (
    <div className="quiet-line not-kept" role="alert">
      <b>{sentence(keeping.notKept)}</b> <SaveJournal />
    </div>
  );
}

/** Lines under the top line: only when there is something a person must know. */
export function KeepingNotes({ atHome }: { readonly atHome: boolean }) {
  const { keeping, isDemonstration, today, openCasebook, removeDemonstration } = useCasebook();
  const { ended } = useSession();
  const [, go] = useLocation();
  // A page of the demonstration has nothing to show of one's own cases: the way back leads to their list.
  const leave = () => {
    go("/cases");
    openCasebook("own");
  };
  const remove = async () => {
    await removeDemonstration();
    go("/cases");
  };
  const say = words.shell;
  return (
    <>
      {isDemonstration ? (
        <p className="quiet-line demo">
          <b>{say.demonstrationOn({ day: today })}</b>
          <span className="both">
            <button type="button" className="act" onClick={leave}>
              {say.closeDemonstration}
            </button>
            <button type="button" className="act" onClick={() => void remove()}>
              {say.removeDemonstration}
            </button>
          </span>
        </p>
      ) : null}
      {keeping.needsSignIn ? (
        <p className="quiet-line" role="status">
          {ended === "device-lost" ? say.signInLost : say.signInNeeded}{" "}
          <Link className="act" href="/sign-in">
            {say.signIn}
          </Link>
        </p>
      ) : null}
      {keeping.stopped ? (
        <p className="quiet-line" role="alert">
          {sentence(keeping.stopped)}
        </p>
      ) : null}
      {keeping.troubles.map((trouble) => (
        <p key={trouble.code} className="quiet-line">
          {sentence(trouble)}
        </p>
      ))}
      {keeping.refused > 0 ? <p className="quiet-line">{say.refused({ entries: keeping.refused })}</p> : null}
      {atHome && keeping.persisted === false && keeping.savedAt ? (
        <p className="quiet-line">{say.mayBeCleared}</p>
      ) : null}
    </>
  );
}
