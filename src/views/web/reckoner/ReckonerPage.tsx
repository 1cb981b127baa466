/** The reckoner: every method without a case, by what it is about; each has a page of its own. */
import { Link } from "wouter";
import { methodsByFamily, methodViewOf, methodViews } from "../../model/index.ts";
import { familyNames, methodPage } from "../../words/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { Missing } from "../parts/Missing.tsx";
import type { PageProps } from "../routes.ts";
import { words } from "../words.ts";
import { Method } from "./Method.tsx";
import "./reckoner.css";

export default function ReckonerPage({ params }: PageProps) {
  if (params.method === undefined) return <AllMethods />;
  const view = methodViewOf(params.method);
  if (!view) return <Missing text={methodPage.none} to={{ href: "/reckoner", says: methodPage.all }} />;
  return <Method key={params.method} name={params.method} view={view} />;
}

function AllMethods() {
  return (
    <main id="page" className="reckoner">
      <Answer text={words.reckoner.answer} />
      <div className="families">
        {methodsByFamily.map(([family, names]) => (
          <section key={family} aria-labelledby={`family-${family}`}>
            <h2 id={`family-${family}`}>{familyNames[family]}</h2>
            <ul>
              {names.map((name) => (
                <li key={name}>
                  <Link href={`/reckoner/${name}`}>{methodViews[name].asks}</Link>
                  <p className="note">{methodViews[name].under}</p>
                </li>
              ))}
            </ul>
          </section>
        ))}
      </div>
    </main>
  );
}
