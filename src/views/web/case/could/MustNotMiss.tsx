/** What must not be missed, whatever the rank: notices that fired, and how far the red flags were asked. */
import { Link } from "wouter";
import type { NoticeView, RedFlagCount, RedFlagView } from "../../../model/index.ts";
import { Rich } from "../../parts/Rich.tsx";
import { words } from "../../words.ts";

interface Props {
  readonly caseId: string;
  readonly flags: readonly RedFlagView[];
  readonly count: RedFlagCount;
  readonly notices: readonly NoticeView[];
}

export function MustNotMiss({ caseId, flags, count, notices }: Props) {
  const say = words.could;
  // What stops the work stands above the question already.
  const present = flags.filter((flag) => flag.act !== null && !flag.stopAndReport);
  return (
    <div className="must-not-miss">
      {present.map((flag) => (
        <div key={flag.id} className="heed">
          <b>{flag.question}</b>
          <span>{[flag.act, ...flag.doNot].join(" ")}</span>
        </div>
      ))}
      {notices.map((notice) => (
        <div key={notice.key} className={notice.report ? "stop" : "heed"}>
          <b>{notice.head}</b>
          <span>
            {notice.why} {notice.act}
          </span>
        </div>
      ))}
      <div className="miss">
        <b>{say.missHead}</b>
        <span className="q2">
          <Rich text={say.miss({ ...count, open: count.all - count.asked })} />
        </span>
        <Link className="act" href={`/cases/${caseId}/1`}>
          {say.seeFlags}
        </Link>
      </div>
    </div>
  );
}
