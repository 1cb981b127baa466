/** The last line: what was done last, when it was stored, how to undo it; what was dropped and how to take it back. */
import { Rich } from "../parts/Rich.tsx";
import { words } from "../words.ts";
import { capOf } from "./KeyCaps.tsx";
import type { BenchAtWork } from "./use-bench.ts";

/** Hours, minutes and seconds of an instant on this device's clock. */
function clock(instant: string): string {
  const at = new Date(instant);
  return [at.getHours(), at.getMinutes(), at.getSeconds()].map((part) => String(part).padStart(2, "0")).join(":");
}

export function LastLine({ work, isBlind }: { readonly work: BenchAtWork; readonly isBlind: boolean }) {
  const say = words.bench;
  const { state, last } = work;
  if (work.isHalted)
    return (
      <p className="last" role="alert">
        <Rich text={say.notStored} />
      </p>
    );
  const half =
    state.asked === "right" && state.left
      ? isBlind
        ? say.halfBlind({ bee: work.next })
        : say.half({ bee: work.next, trunk: state.left })
      : null;
  return (
    <>
      <p className="last" role="status">
        {say.last}{" "}
        {half ? (
          <Rich text={half} />
        ) : last.kind === "bee" ? (
          <>
            <Rich
              text={
                isBlind ? say.lastBlind({ bee: last.bee.bee }) : say.lastBee({ bee: last.bee.bee, what: last.bee.what })
              }
            />{" "}
            <span className="stored">{say.stored({ time: clock(last.bee.recordedAt) })}</span>
          </>
        ) : last.kind === "undone" ? (
          <Rich text={say.undone({ bee: last.bee })} />
        ) : (
          say.nothingYet
        )}
        {state.dropped ? (
          <>
            {" "}
            <span className="dropped">
              {say.dropped({ key: capOf(state.dropped.key), held: state.dropped.why === "held" })}
            </span>
          </>
        ) : null}
      </p>
      <button
        type="button"
        className="key-act"
        onClick={(event) => work.press({ key: "-", at: event.timeStamp })}
        disabled={!half && work.bees.length === 0}
      >
        <kbd className="cap">−</kbd>
        {say.undoIt}
      </button>
      {state.dropped ? (
        <button type="button" className="key-act" onClick={(event) => work.press({ key: "/", at: event.timeStamp })}>
          <kbd className="cap">/</kbd>
          {say.takeBack}
        </button>
      ) : null}
    </>
  );
}
