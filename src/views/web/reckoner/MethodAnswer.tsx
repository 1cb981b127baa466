/** The answer of a method: a sentence, pictures, notices, every figure, and what it all rests on. */
import type { RefObject } from "react";
import { Link } from "wouter";
import type { Reply } from "../../../reasoning/index.ts";
import { answerFigures, cellText, commandLine, type MethodView, type Question } from "../../model/index.ts";
import { methodPage } from "../../words/index.ts";
import { Rich } from "../parts/Rich.tsx";
import { PictureOf } from "../pictures/PictureOf.tsx";
import type { MethodMeta } from "../reckon/method-messages.ts";
import { sentence } from "../whole-words.ts";

/** Enough to be checked against another program. */
const digits = 8;

export function MethodAnswer({
  ref,
  name,
  onward,
  view,
  method,
  asked,
  reply,
  isOld,
}: {
  readonly ref: RefObject<HTMLDivElement | null>;
  readonly name: string;
  /** Where the answer can be used; null for nowhere. */
  readonly onward: string | null;
  readonly view: MethodView;
  readonly method: MethodMeta;
  readonly asked: Question;
  readonly reply: Exclude<Reply, { readonly kind: "unfit" }>;
  /** A newer question is being reckoned. */
  readonly isOld: boolean;
}) {
  return (
    <div ref={ref} tabIndex={-1} className="result" aria-busy={isOld || undefined}>
      {reply.problems.map((each) => (
        <p key={`${each.code} ${each.field}`} className="note" data-severity={each.severity}>
          {sentence(each)}
        </p>
      ))}
      {reply.kind === "answered" ? (
        <>
          <p className="says" role="status">
            <Rich text={view.says(reply.value)} />
          </p>
          {onward ? (
            <p className="acts">
              <Link className="act" href={onward}>
                {methodPage.onward}
              </Link>
            </p>
          ) : null}
          {view.pictures(reply.value).map((picture) => (
            <PictureOf key={picture.name} picture={picture} />
          ))}
        </>
      ) : null}
      <Figures answer={reply.value as Readonly<Record<string, unknown>>} />
      <details>
        <summary>{methodPage.restsOn}</summary>
        <ul>
          {method.assumptions.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
        <p className="trace">
          {methodPage.source}: {method.source}
        </p>
      </details>
      <details>
        <summary>{methodPage.command}</summary>
        <p className="note">{methodPage.commandUnder}</p>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long line is read by moving sideways, by keys too */}
        <pre className="command mono" tabIndex={0}>
          {commandLine(name, asked)}
        </pre>
      </details>
    </div>
  );
}

function Figures({ answer }: { readonly answer: Readonly<Record<string, unknown>> }) {
  const { plain, tables } = answerFigures(answer, digits);
  return (
    <details className="figures">
      <summary>{methodPage.figures}</summary>
      <dl>
        {plain.map(([each, value]) => (
          <div key={each}>
            <dt>{each}</dt>
            <dd className="mono">{value}</dd>
          </div>
        ))}
      </dl>
      {tables.map(({ name, columns, rows }) => (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is read by moving sideways, by keys too
        <section key={name} className="twin-table" tabIndex={0} aria-label={name}>
          <table>
            <caption>{name}</caption>
            <thead>
              <tr>
                {columns.map((column) => (
                  <th key={column} scope="col">
                    {column}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((row, place) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: rows of an answer are told apart by their place alone
                <tr key={place}>
                  {row.map((cell, index) => (
                    <td key={columns[index]} className={typeof cell === "number" ? "num-r" : undefined}>
                      {cellText(cell, digits)}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ))}
    </details>
  );
}
