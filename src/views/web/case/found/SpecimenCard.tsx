/** The label of a specimen with its determination beneath, as on one pin. */
import { Link } from "wouter";
import { conditions } from "../../../../knowledge/index.ts";
import { apiaryOf, type SpecimenFound } from "../../../model/index.ts";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";

export function SpecimenCard({ specimen }: { readonly specimen: SpecimenFound }) {
  const { casebook } = useCasebook();
  const say = words.found;
  const { label, readings } = specimen;
  const state = casebook.cases[label.case];
  const apiary = state ? apiaryOf(casebook, state) : null;
  const first = readings[0];
  return (
    <section className="found-part">
      <h2>{say.specimen({ code: label.code })}</h2>
      {/* biome-ignore lint/a11y/useSemanticElements: a label is no fieldset of a form */}
      <div className="label" role="group" aria-label={words.bench.specimenLabel}>
        <span className="code">{label.code}</span>
        <span className="place">
          {apiary?.name}, {specimen.colony}
        </span>
        <span className="row">
          <span>{apiary?.place}</span>
          {apiary?.elevationMetres === undefined ? null : (
            <span className="n">{words.apiaries.metres({ metres: apiary.elevationMetres })}</span>
          )}
        </span>
        <span className="row">
          <span>{words.bench.from[label.from]}</span>
          <time>{specimen.takenOn ?? ""}</time>
        </span>
        <span className="foot">
          {say.collectedBy({ kept: words.bench.keptIn[label.preservative], collector: label.collector ?? null })}
        </span>
      </div>
      {first ? (
        // biome-ignore lint/a11y/useSemanticElements: a label is no fieldset of a form
        <div className="label det" role="group" aria-label={say.determination}>
          {first.tally.positive > 0 ? (
            <span className="nm" lang="la">
              {conditions.tracheal_mites.scientificName}
            </span>
          ) : null}
          <span className="row">
            <span>
              {first.tally.positive > 0 ? say.inTrunks(first.tally) : say.nothingInTrunks({ read: first.tally.read })}
            </span>
          </span>
          <span className="row">
            <span>{say.readBy({ readers: readings.map((each) => each.started.reader).join(", ") })}</span>
            <time>{first.finished.on}</time>
          </span>
        </div>
      ) : null}
      <p className="note card-act">
        <Link className="act" href={`/bench/${specimen.id}`}>
          {say.toBench}
        </Link>
      </p>
    </section>
  );
}
