/** One method: its fields at the left; the answer, its pictures and everything it rests on at the right. */
import { type FormEvent, useCallback, useEffect, useMemo, useRef, useState } from "react";
import { Link, useLocation, useSearch } from "wouter";
import type { Problem } from "../../../units/index.ts";
import { fieldOfProblem, fieldTroubles, type MethodView, methodFields, questionOf } from "../../model/index.ts";
import { methodPage } from "../../words/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { fieldsOf, Saying } from "../parts/Form.tsx";
import type { MethodMeta } from "../reckon/method-messages.ts";
import { useMethod } from "../reckon/use-method.ts";
import { sentence } from "../whole-words.ts";
import { MethodAnswer } from "./MethodAnswer.tsx";
import { MethodFields } from "./MethodFields.tsx";

interface Props {
  readonly name: string;
  readonly view: MethodView;
}

export function Method({ name, view }: Props) {
  const reckoning = useMethod(name);
  const from = caseOf(useSearch());
  return (
    <main id="page" className="reckoner">
      <p className="back">
        <Link className="act" href="/reckoner">
          {methodPage.all}
        </Link>
        {from ? (
          <Link className="act" href={from}>
            {methodPage.toCase}
          </Link>
        ) : null}
      </p>
      <Answer text={`**${view.asks}**`} />
      <p className="note q3">{view.under}</p>
      {reckoning.method ? <Asked name={name} view={view} method={reckoning.method} reckoning={reckoning} /> : null}
      {reckoning.method === null && reckoning.hasFailed ? <p role="alert">{methodPage.notLoaded}</p> : null}
    </main>
  );
}

function Asked({
  name,
  view,
  method,
  reckoning,
}: Props & { readonly method: MethodMeta; readonly reckoning: ReturnType<typeof useMethod> }) {
  const given = useSearch();
  const [, go] = useLocation();
  const fields = useMemo(
    () => withGiven(methodFields(method.inputShape, view.fields, method.example), given),
    [method, view, given],
  );
  const isWhole = fields.every(({ needed, typed }) => !needed || typed !== "");
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [isExample, setExample] = useState(given === "");
  // Whoever pressed the button at the foot of a long form is brought to the answer.
  const [isWanted, setWanted] = useState(false);
  const result = useRef<HTMLDivElement>(null);
  const form = useRef<HTMLFormElement>(null);
  const { ask, answer } = reckoning;

  const send = useCallback(() => {
    if (!form.current) return;
    const question = questionOf(fieldsOf(form.current), method.inputShape, view.fields);
    setProblems(question.ok ? [] : question.problems);
    if (!question.ok) return;
    ask(question.value, view.more(question.value));
  }, [ask, method, view]);
  // The fields hold an example, or what the address brought: when nothing is missing it is answered at once, and only once.
  const begun = useRef(false);
  useEffect(() => {
    if (begun.current) return;
    begun.current = true;
    if (isWhole) send();
  }, [send, isWhole]);

  useEffect(() => {
    if (!isWanted || !answer || reckoning.working !== null) return;
    setWanted(false);
    result.current?.scrollIntoView({ block: "start" });
    result.current?.focus({ preventScroll: true });
  }, [isWanted, answer, reckoning.working]);

  // An answer beside a question that could not be read would be taken for its answer.
  const standing = problems.length === 0 ? answer : null;
  const all = standing?.reply.kind === "unfit" ? standing.reply.problems : problems;
  const told = fieldTroubles(all, { fields, shape: method.inputShape, words: view.fields });
  const byField = (field: string) => told.filter((each) => fieldOfProblem(each, fields) === field);
  const others = told.filter((each) => fieldOfProblem(each, fields) === null);
  return (
    <div className="reckoning">
      <form
        ref={form}
        onSubmit={(event: FormEvent) => {
          event.preventDefault();
          setExample(false);
          send();
          setWanted(true);
          const address = addressOf(name, fieldsOf(event.currentTarget as HTMLFormElement), caseOf(given));
          if (address) go(address, { replace: true });
        }}
        noValidate
        className="reckon-form"
      >
        {isExample ? <p className="note">{methodPage.example}</p> : null}
        {isWhole || answer ? null : <p className="note">{methodPage.incomplete}</p>}
        <Saying.Provider value={sentence}>
          <MethodFields fields={fields} problemsOf={byField} />
        </Saying.Provider>
        {others.map((each) => (
          <p key={`${each.code} ${each.field}`} className="trouble">
            {sentence(each)}
          </p>
        ))}
        <button type="submit" className="press">
          {methodPage.reckon}
        </button>
        <Working reckoning={reckoning} />
      </form>
      {standing && standing.reply.kind !== "unfit" ? (
        <MethodAnswer
          ref={result}
          name={name}
          onward={view.onward ? onwardAddress(view.onward, given) : null}
          view={view}
          method={method}
          asked={standing.question}
          reply={standing.reply}
          isOld={reckoning.working !== null}
        />
      ) : null}
    </div>
  );
}

/** Field values brought by the address stand in place of the example's; what it leaves out is as it usually is. */
function withGiven(fields: ReturnType<typeof methodFields>, search: string): ReturnType<typeof methodFields> {
  const given = new URLSearchParams(search);
  if (!fields.some(({ name }) => given.has(name))) return fields;
  return fields.map((field) => ({
    ...field,
    typed: given.get(field.name) ?? (field.usual || (field.kind === "choice" ? field.typed : "")),
  }));
}

/** The question of a case that a link came from. */
function caseOf(search: string): string | null {
  const from = new URLSearchParams(search).get("from");
  return from?.startsWith("/cases/") ? from : null;
}

/** The method that goes on from here, with what both are asked. */
const onwardAddress = (method: string, search: string): string => `/reckoner/${method}${search ? `?${search}` : ""}`;

/** A longer address is not kept: it would be cut on its way to others. */
const longestAddress = 1800;

/** What was typed as an address that brings it back; null when it is too long for one. */
function addressOf(name: string, typed: Readonly<Record<string, string>>, from: string | null): string | null {
  const filled = Object.entries(typed).filter(([, value]) => value.trim() !== "");
  const address = `/reckoner/${name}?${new URLSearchParams([...filled, ...(from ? [["from", from]] : [])])}`;
  return address.length > longestAddress ? null : address;
}

/** Shown only when it takes long enough to be noticed. */
function Working({
  reckoning: { working, stop, wasStopped, hasFailed },
}: {
  readonly reckoning: ReturnType<typeof useMethod>;
}) {
  const [isLong, setLong] = useState(false);
  const isWorking = working !== null;
  useEffect(() => {
    if (!isWorking) return setLong(false);
    const timer = setTimeout(() => setLong(true), 300);
    return () => clearTimeout(timer);
  }, [isWorking]);
  if (hasFailed) return <p role="alert">{methodPage.failed}</p>;
  if (wasStopped) return <p role="status">{methodPage.stopped}</p>;
  if (!isWorking || !isLong) return null;
  return (
    <div className="working">
      <p role="status">{working > 0 ? methodPage.done(working) : methodPage.working}</p>
      <progress aria-label={methodPage.working} max={1} {...(working > 0 ? { value: working } : {})} />
      <button type="button" className="act" onClick={stop}>
        {methodPage.stop}
      </button>
    </div>
  );
}
