/** What the service keeps apart: each entry beside the one that stands under its number, settled by a person. */
import { useEffect, useState } from "react";
import { Link } from "wouter";
import { type Decision, type KeptApart, takingInTrouble } from "../../../casebook/index.ts";
import type { Problem } from "../../../units/index.ts";
import { type ApartSide, apartView, hrefOf, isWaiting, readSettling, withOwnSettlements } from "../../model/index.ts";
import { apartWords as say } from "../../words/index.ts";
import { ask } from "../account/ask.ts";
import { Answer } from "../parts/Answer.tsx";
import { ChoiceField, LongField, Saying, sentence, useForm } from "../parts/Form.tsx";
import { Rich } from "../parts/Rich.tsx";
import { useCasebook } from "../store/context.ts";
import { localTime } from "../store/today.ts";
import "./records.css";

interface Told extends KeptApart {
  readonly mayTakeIn: boolean;
}
interface Reply {
  readonly apart: readonly Told[];
  readonly more: number;
  /** Of all, told here or not. */
  readonly waiting: number;
}

export default function ApartPage() {
  const { may, isDemonstration } = useCasebook();
  const why = isDemonstration ? say.demonstration : may("kept-apart-settled") ? null : say.notYours;
  if (why === null) return <Judging />;
  return (
    <main id="page" className="plain">
      <Answer text={why} />
    </main>
  );
}

function Judging() {
  const { casebook, programme, keeping } = useCasebook();
  const [reply, setReply] = useState<Reply | null>(null);
  const [trouble, setTrouble] = useState<readonly string[]>([]);
  const [isSettled, setSettled] = useState(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked again whenever something was sent
  useEffect(() => {
    let here = true;
    void ask<Reply>("GET", `/api/programmes/${programme}/apart`, say.unreached).then((answer) => {
      if (!here) return;
      if (answer.ok) setReply(answer.value);
      setTrouble(answer.ok ? [] : answer.says);
    });
    return () => {
      here = false;
    };
  }, [programme, keeping.unsent]);
  const apart = withOwnSettlements(casebook, programme, reply?.apart ?? []);
  const title = reply ? say.title(countsOf(reply, apart)) : say.looking;
  return (
    <main id="page" className="plain records-page">
      <Answer text={reply === null && trouble.length > 0 ? trouble.join(" ") : title} under={say.under} />
      <div role="status">{isSettled ? <Rich text={say.settled} /> : null}</div>
      <Saying value={sayApart}>
        {apart.map((kept) => (
          <Kept key={kept.hash} kept={kept} settled={() => setSettled(true)} />
        ))}
      </Saying>
      {reply && reply.more > 0 ? <p className="q2">{say.more({ count: reply.more })}</p> : null}
    </main>
  );
}

/** As the service counts, less what was settled here and is not sent yet. */
function countsOf(reply: Reply, apart: readonly KeptApart[]): { readonly waiting: number; readonly settled: number } {
  const settledHere = reply.apart.filter(isWaiting).length - apart.filter(isWaiting).length;
  const waiting = reply.waiting - settledHere;
  return { waiting, settled: apart.length + reply.more - waiting };
}

function sayApart(problem: Problem): string {
  const { problems } = say;
  const code = problem.code as keyof typeof problems;
  return Object.hasOwn(problems, code) ? problems[code](problem.slots) : sentence(problem);
}

const whenOf = (instant: string): string => `${instant.slice(0, 10)}, ${localTime(instant)}`;

function Kept({ kept, settled }: { readonly kept: Told; readonly settled: () => void }) {
  const { casebook } = useCasebook();
  const { head, kept: own, standing } = apartView(casebook, kept, say);
  const id = `k-${kept.hash.slice(0, 12)}`;
  return (
    <section aria-labelledby={id}>
      <h2 id={id} className="seal-head">
        {head}
      </h2>
      <div className="sides">
        <Side side={own} />
        {standing ? <Side side={standing} /> : <p className="side q2">{say.noneStands}</p>}
      </div>
      {kept.settlements.map(({ entry, value, author, recordedAt }) => (
        <p key={entry} className="settlement">
          <Rich text={say.says({ decision: value.decision, author, when: whenOf(recordedAt) })} /> {value.reason}
        </p>
      ))}
      {isWaiting(kept) ? <Settle kept={kept} settled={settled} /> : null}
    </section>
  );
}

function Side({ side: { title, what, author, recordedAt, says, note } }: { readonly side: ApartSide }) {
  return (
    <div className="side">
      <h3>{title}</h3>
      <dl>
        <div>
          <dt className="vh">{title}</dt>
          <dd>{what}</dd>
        </div>
        {says.map(({ name, value, differs }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd className={differs ? undefined : "same"}>{value}</dd>
          </div>
        ))}
      </dl>
      {note ? <p>{note}</p> : null}
      <p className="q2">{say.by({ author, when: whenOf(recordedAt) })}</p>
    </div>
  );
}

function Settle({ kept, settled }: { readonly kept: Told; readonly settled: () => void }) {
  const { casebook, record, programme, today } = useCasebook();
  const href = hrefOf(casebook, kept.entry.header.about[0] ?? "");
  const trouble = takingInTrouble(kept);
  const mayTakeIn = trouble === null && (kept.mayTakeIn || kept.cameInAs !== null || kept.withdrawnBy !== null);
  const choices: readonly Decision[] = mayTakeIn ? ["taken-in", "left-out"] : ["left-out"];
  const { problems, onSubmit } = useForm(
    (fields) => readSettling(fields, kept, { choices, programme, on: today }),
    async (drafts) => {
      if (drafts.length > 0) await record(drafts);
      settled();
    },
  );
  return (
    <form className="line-form settle" onSubmit={onSubmit} noValidate>
      {kept.settlements.length > 1 ? <p className="heed-line">{say.differ}</p> : null}
      {kept.cameInAs ? (
        <p>
          {say.cameIn}{" "}
          {href ? (
            <Link className="act" href={href}>
              {say.whereItStands}
            </Link>
          ) : null}
        </p>
      ) : null}
      {kept.withdrawnBy ? <p>{say.isWithdrawn}</p> : null}
      {trouble ? <p className="heed-line">{sayApart(trouble)}</p> : null}
      {trouble === null && !mayTakeIn ? <p className="heed-line">{say.notAllowed}</p> : null}
      <ChoiceField
        name="decision"
        label={say.decision}
        problems={problems}
        choices={[{ value: "", says: say.choose }, ...choices.map((value) => ({ value, says: say.decisions[value] }))]}
        needed
      />
      <LongField name="reason" label={say.reason} needed problems={problems} rows={2} />
      <button type="submit" className="press quiet">
        {say.settle}
      </button>
    </form>
  );
}
