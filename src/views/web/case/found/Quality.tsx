/** What strengthens and what weakens one specimen. */
import { Link } from "wouter";
import { qualityNotes, type SpecimenFound } from "../../../model/index.ts";
import { Rich } from "../../parts/Rich.tsx";
import { words } from "../../words.ts";

export function Quality({ specimen, caseId }: { readonly specimen: SpecimenFound; readonly caseId: string }) {
  const say = words.found;
  const notes = qualityNotes(specimen, words);
  return (
    <section className="found-part">
      <h2>{say.qualityHead}</h2>
      <ul className="quality">
        {notes.map((note) => (
          <li key={note.says}>
            <span className={`k ${note.kind}`} aria-hidden="true" />
            <span>
              <Rich text={note.says} />
              {note.resample ? (
                <>
                  {" "}
                  <Link className="act" href={`/cases/${caseId}/3`}>
                    {say.quality.resample}
                  </Link>
                </>
              ) : null}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
