/** One vial at the bench: receive it, begin, read, or see what came of it. */
import { Link } from "wouter";
import { benchView } from "../../model/index.ts";
import { Answer } from "../parts/Answer.tsx";
import type { PageProps } from "../routes.ts";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";
import { Reading } from "./Reading.tsx";
import { Held, Reception } from "./Reception.tsx";
import { SpecimenLabel } from "./SpecimenLabel.tsx";
import { StartReading } from "./StartReading.tsx";
import "./bench.css";

export default function VialPage({ params }: PageProps) {
  const { casebook, isDemonstration } = useCasebook();
  const say = words.bench;
  const view = benchView(casebook, params.specimen ?? "", words);
  if (view?.open) return <Reading key={view.open.id} view={view} reading={view.open} />;
  return (
    <main id="page" className="bench-page">
      <p className="way">
        <Link className="act" href="/bench">
          {say.toBench}
        </Link>
        {isDemonstration ? <span className="q3"> {words.shell.demonstration}</span> : null}
      </p>
      {view ? (
        <>
          <SpecimenLabel view={view} />
          {view.state === "held" ? (
            <Held view={view} />
          ) : view.state === "to-arrive" ? (
            <Reception view={view} />
          ) : view.state === "rejected" ? (
            <Answer text={say.rejectedNote({ reason: view.received?.reason ?? "" })} />
          ) : (
            <StartReading key={view.locked.length} view={view} />
          )}
        </>
      ) : (
        <Answer text={say.missing} />
      )}
    </main>
  );
}
