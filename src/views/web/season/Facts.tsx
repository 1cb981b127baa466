/** Which colony a season is of, and what its forecast comes from. */
import { useMemo } from "react";
import { Link, useLocation } from "wouter";
import {
  type ColonySeason,
  type CountAfter,
  countedInOpenCases,
  countedSeasons,
  countsAfterDone,
  doneFrom,
  lastNight,
  oneNight,
  type SeasonAsk,
  seasonAddress,
} from "../../model/index.ts";
import { seasonWords } from "../../words/index.ts";
import { useCasebook } from "../store/context.ts";
import { sentence } from "../whole-words.ts";
import { useLastNight } from "./use-last-night.ts";

/** The line above the answer: case, colony, place. */
export function Head({ colony }: { readonly colony: ColonySeason | null }) {
  const { casebook } = useCasebook();
  const [, go] = useLocation();
  const say = seasonWords;
  if (!colony) return <OnRecord />;
  const others = countedSeasons(casebook, colony.caseId);
  return (
    <p className="line">
      <Link className="act" href={`/cases/${colony.caseId}/5`}>
        {say.toCase({ code: colony.caseCode })}
      </Link>
      <label>
        {say.colony}{" "}
        <select value={colony.colony} onChange={(event) => go(seasonAddress(colony.caseId, event.target.value))}>
          {(others.some(({ id }) => id === colony.colony)
            ? others
            : [{ id: colony.colony, code: colony.code }, ...others]
          ).map(({ id, code }) => (
            <option key={id} value={id}>
              {code}
            </option>
          ))}
        </select>
      </label>
      <span>{colony.place}</span>
    </p>
  );
}

/** Cases looked through for counted colonies. */
const mostCases = 30;

/** Without a colony: those on record that a season can be reckoned of. */
function OnRecord() {
  const { casebook, today } = useCasebook();
  const cases = useMemo(() => countedInOpenCases(casebook, mostCases), [casebook]);
  const nights = useLastNight();
  const night = oneNight(nights, today);
  if (cases.length === 0) return <p className="line">{seasonWords.title}</p>;
  return (
    <nav className="line" aria-label={seasonWords.onRecord}>
      <span>{seasonWords.onRecord}:</span>
      <ul>
        {cases.flatMap(({ caseId, caseCode, colonies }) =>
          colonies.map(({ id, code }) => (
            <li key={`${caseId} ${id}`}>
              <Link className="act" href={seasonAddress(caseId, id)}>
                {seasonWords.colonyOf({ colony: code, case: caseCode })}
              </Link>
              <Night told={lastNight(nights, { caseId, colony: id, today }, sentence)} whole={night === null} />
            </li>
          )),
        )}
      </ul>
      {night === null ? null : <p className="note">{night}</p>}
    </nav>
  );
}

/** What a night found, with its own day where the colonies are not all of one. */
function Night({ told, whole }: { readonly told: ReturnType<typeof lastNight>; readonly whole: boolean }) {
  if (told === null) return null;
  return <span className="night">{whole ? told.says : told.short}</span>;
}

/** Where it all comes from: what was left out, done, assumed. */
export function From({
  colony,
  problems,
  ask,
}: {
  readonly colony: ColonySeason | null;
  readonly problems: readonly string[];
  readonly ask: SeasonAsk | null;
}) {
  const say = seasonWords;
  const { today } = useCasebook();
  const nights = useLastNight();
  const night = colony ? lastNight(nights, { ...colony, today }, sentence) : null;
  const done = colony && ask ? doneFrom(colony.done, ask.start.date) : null;
  const ofCounts = (colony?.counts ?? []).flatMap(({ isLimited, endedEarly, code, ...counted }) => {
    const slots = { code, count: say.countOn(counted) };
    if (isLimited) return [say.leftOut(slots)];
    return endedEarly ? [say.endedEarly(slots)] : [];
  });
  const notes = [
    ...(colony ? [say.fromCase({ code: colony.code, case: colony.caseCode })] : []),
    ...(night === null ? [] : [night.says]),
    ...(ask?.counts.length === 0 ? [say.noCounts] : []),
    ...ofCounts,
    ...(ask && ask.actions.length > 0 ? [say.doneBefore({ actions: ask.actions.map(say.actionWhen) })] : []),
    ...(done && done.leftOut.length > 0 ? [say.leftOutDone({ actions: done.leftOut.map(say.actionWhen) })] : []),
    ...(done && done.over.length > 0 ? [say.overBefore({ actions: done.over.map(say.actionWhen) })] : []),
    ...(colony ? countsAfterDone(colony).map((each) => say.afterDone(afterWords(each))) : []),
    ...(colony && colony.unknown.length > 0 ? [say.unknownDone({ ingredients: colony.unknown })] : []),
    ...(colony?.hasFlows ? [say.flowAssumed] : []),
    ...problems,
  ];
  return (
    <section aria-labelledby="h-from">
      <h2 id="h-from">{say.fromHead}</h2>
      {notes.length > 0 ? (
        <ul className="notes">
          {[...new Set(notes)].map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      ) : null}
    </section>
  );
}

const afterWords = ({ count, action, days }: CountAfter) => ({
  count: seasonWords.countOn(count),
  action: seasonWords.actionName(action).toLowerCase(),
  days,
});
