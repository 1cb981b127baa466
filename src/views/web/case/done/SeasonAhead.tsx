/** The season ahead of the colony that is decided about: one sentence, a small fan, the way to Season. */
import { useEffect, useMemo } from "react";
import { Link } from "wouter";
import { controlIds, controls } from "../../../../knowledge/index.ts";
import {
  type ColonySeason,
  choicesAsked,
  colonySeason,
  intended,
  modelledControls,
  readSeason,
  type SeasonAsk,
  seasonAddress,
  seasonFields,
  seasonView,
} from "../../../model/index.ts";
import { seasonWords } from "../../../words/index.ts";
import { Rich } from "../../parts/Rich.tsx";
import { Picture } from "../../pictures/Picture.tsx";
import { useSeason } from "../../reckon/use-season.ts";
import { Fan } from "../../season/Fan.tsx";
import { fanFrame } from "../../season/frame.ts";
import { useWidth } from "../../season/SeasonPicture.tsx";
import { useCasebook } from "../../store/context.ts";
import { sentence } from "../../whole-words.ts";
import "../../season/season.css";

/** Fewer than on the page: a sketch that leads there. */
const draws = 400;

interface Props {
  readonly caseId: string;
  /** The colony; null when none of the case is counted. */
  readonly colony: string | null;
  /** Id of the control decided on, if any. */
  readonly control: string | null;
}

export default function SeasonAhead({ caseId, colony, control }: Props) {
  const { casebook, today } = useCasebook();
  const say = seasonWords;
  const season = useMemo(
    () => (colony === null ? null : colonySeason(casebook, { caseId, colony, today })),
    [casebook, caseId, colony, today],
  );
  return (
    <section className="season-ahead" aria-labelledby="h-ahead">
      <div className="head">
        <h2 id="h-ahead">{season ? say.aheadOf({ code: season.code }) : say.ahead}</h2>
      </div>
      {season ? <Ahead key={season.colony} season={season} control={control} /> : <p>{say.aheadNothing}</p>}
    </section>
  );
}

function Ahead({ season, control }: { readonly season: ColonySeason; readonly control: string | null }) {
  const { today } = useCasebook();
  const say = seasonWords;
  const { ask, seen, unfit, hasFailed } = useSeason<SeasonAsk>();
  const [holder, width] = useWidth(480);
  const actions = useMemo(() => intended(season, { control, today }), [season, control, today]);
  useEffect(() => {
    const read = readSeason(seasonFields(season, today), season);
    if (!read.ok) return;
    ask({ ...read.value, draws, choices: choicesAsked(actions.length > 0 ? [actions] : []) }, read.value);
  }, [season, actions, today, ask]);
  const view = useMemo(
    () =>
      seen?.isWhole
        ? seasonView(seen.asked, seen, actions.length > 0 ? { place: 0, kinds: actions.map(({ kind }) => kind) } : null)
        : null,
    [seen, actions],
  );
  const frame = fanFrame(view ?? { from: today, to: today }, Math.min(width, 480), { isSmall: true, flagRows: 0 });
  return (
    <div ref={holder}>
      {unfit.map((each) => (
        <p key={each.code}>{sentence(each)}</p>
      ))}
      {hasFailed ? <p role="alert">{say.failed}</p> : null}
      {view ? (
        <>
          <p>
            <Rich text={view.says} />
          </p>
          {control !== null && modelledControls[control] === undefined ? (
            <p>{say.notModelled({ control: termOf(control) })}</p>
          ) : null}
          <Picture
            title={say.picture}
            under={say.pictureUnder}
            table={{ name: "season", columns: view.table.columns, rows: view.table.rows }}
          >
            <Fan view={view} year={null} supers={[]} frame={frame} flags={[]} />
          </Picture>
        </>
      ) : unfit.length === 0 && !hasFailed ? (
        <p className="busy" aria-busy="true">
          {say.answerBusy.replaceAll("**", "")}
        </p>
      ) : null}
      <p>
        <Link className="act" href={seasonAddress(season.caseId, season.colony)}>
          {say.toSeason}
        </Link>
      </p>
    </div>
  );
}

function termOf(control: string): string {
  const id = controlIds.find((each) => each === control);
  return id === undefined ? control : controls[id].term;
}
