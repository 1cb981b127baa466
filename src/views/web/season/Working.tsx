/** How far a season is reckoned, with a way to stop it; and what a stopped one has kept. */
import { useEffect, useState } from "react";
import { seasonWords } from "../../words/index.ts";
import type { SeasonReckoning } from "../reckon/use-season.ts";

interface Props {
  readonly reckoning: Pick<SeasonReckoning<unknown>, "working" | "wasStopped" | "hasFailed" | "stop" | "seen">;
  /** Choices asked for, doing nothing among them. */
  readonly all: number;
  readonly again: () => void;
}

export function Working({ reckoning: { working, wasStopped, hasFailed, stop, seen }, all, again }: Props) {
  const say = seasonWords;
  const isLong = useLong(working !== null);
  if (hasFailed) return <p role="alert">{say.failed}</p>;
  if (wasStopped)
    return (
      <p className="working">
        <span role="status">
          {seen && !seen.isWhole ? say.stopped({ reckoned: seen.outcomes.length, all }) : say.stoppedEarly}
        </span>{" "}
        <button type="button" className="act" onClick={again}>
          {say.again}
        </button>
      </p>
    );
  if (working === null || !isLong) return null;
  return (
    <p className="working">
      <span role="status">{say.working({ share: working })}</span>{" "}
      <progress value={working} max={1} aria-label={say.working({ share: working })} />{" "}
      <button type="button" className="act" onClick={stop}>
        {say.stop}
      </button>
    </p>
  );
}

/** True once something takes long enough to be noticed. */
function useLong(isWorking: boolean): boolean {
  const [isLong, setLong] = useState(false);
  useEffect(() => {
    if (!isWorking) return setLong(false);
    const timer = setTimeout(() => setLong(true), 300);
    return () => clearTimeout(timer);
  }, [isWorking]);
  return isLong;
}
