/** Before and after, beside an untreated colony: what the counts say, by each method, and what may not be said. */
import { useState } from "react";
import { Link } from "wouter";
import type { CaseState } from "../../../../casebook/index.ts";
import type { Day } from "../../../../units/index.ts";
import { type BeforeAfter, checkView, comparators, fromCase, reductionAddress } from "../../../model/index.ts";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";

export function Check({ state }: { readonly state: CaseState }) {
  const { casebook } = useCasebook();
  const say = words.worked;
  const others = comparators(casebook, state);
  const [chosen, choose] = useState<string | null | undefined>(undefined);
  const [scored, score] = useState<"any-mite" | "living-mites">("any-mite");
  const control = chosen === undefined ? (others[0]?.id ?? null) : chosen;
  const view = checkView(casebook, state, { control, scored, words });
  const further = view ? reductionAddress(view) : null;
  return (
    <section aria-labelledby="h-check">
      <div className="head">
        <h2 id="h-check">{say.checkHead}</h2>
        <span className="note q3">{say.checkUnder}</span>
      </div>
      {view ? (
        <>
          <div className="line-form check-form">
            <label className="field">
              {say.compareWith}
              <select value={control ?? ""} onChange={(event) => choose(event.target.value || null)}>
                {others.map((colony) => (
                  <option key={colony.id} value={colony.id}>
                    {colony.code}
                  </option>
                ))}
                <option value="">{say.nobody}</option>
              </select>
            </label>
            <label className="field">
              {say.scored}
              <select
                value={scored}
                onChange={(event) => score(event.target.value === "living-mites" ? "living-mites" : "any-mite")}
              >
                <option value="any-mite">{say.scores["any-mite"]}</option>
                <option value="living-mites">{say.scores["living-mites"]}</option>
              </select>
            </label>
          </div>
          <table className="before-after">
            <thead>
              <tr>
                <th scope="col">{say.checkColumns.group}</th>
                <th scope="col">{say.checkColumns.colonies}</th>
                <th scope="col" className="num-r">
                  {say.checkColumns.before}
                </th>
                <th scope="col" className="num-r">
                  {say.checkColumns.after}
                </th>
              </tr>
            </thead>
            <tbody>
              <Group name={say.groups.treated} group={view.treated} />
              {view.control ? <Group name={say.groups.control} group={view.control} /> : null}
            </tbody>
          </table>
          <table className="methods">
            <thead>
              <tr>
                <th scope="col">{say.methodColumns.method}</th>
                <th scope="col" className="num-r">
                  {say.methodColumns.value}
                </th>
                <th scope="col" className="num-r">
                  {say.methodColumns.range}
                </th>
                <th scope="col">{say.methodColumns.rule}</th>
              </tr>
            </thead>
            <tbody>
              {view.methods.map((method) => (
                <tr key={method.key}>
                  <td>{method.name}</td>
                  <td className="num-r big">{method.value}</td>
                  <td className="num-r c nw">{method.range}</td>
                  <td className="note q3">{method.rule}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {view.expected ? <p className="expected">{view.expected}</p> : null}
          {view.control ? null : <p className="heed-line">{say.refusal}</p>}
          <ul className="notes">
            {view.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
          <p className="trace">{say.trace}</p>
          {further ? (
            <p className="acts">
              <Link className="act" href={fromCase(further, state.id, 6)}>
                {say.reckonFurther}
              </Link>
            </p>
          ) : null}
        </>
      ) : (
        <p className="q2">{say.noAfter}</p>
      )}
    </section>
  );
}

function Group({ name, group }: { readonly name: string; readonly group: BeforeAfter }) {
  const say = words.worked;
  return (
    <tr>
      <td>
        <b>{name}</b>
      </td>
      <td className="c">{group.colonies.join(", ")}</td>
      <td className="num-r">
        {say.counts(group.before)} <Taken on={group.beforeOn} />
      </td>
      <td className="num-r">
        {say.counts(group.after)} <Taken on={group.afterOn} />
      </td>
    </tr>
  );
}

const Taken = ({ on }: { readonly on: Day }) => (
  <time className="note q3" dateTime={on}>
    {words.case.day({ day: on })}
  </time>
);
