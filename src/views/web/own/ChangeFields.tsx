/** The fields of a change, by what it changes; a figure is typed of 100 beside the one that stands. */
import { useState } from "react";
import { type Evidence, evidenceSeasons } from "../../../knowledge/index.ts";
import type { Problem } from "../../../units/index.ts";
import { type ChangeKind, figureNow, newOne, noneChosen, roles, rollUps, urgencies } from "../../model/index.ts";
import { type Choice, ChoiceField, LongField, TextField } from "../parts/Form.tsx";
import { words } from "../whole-words.ts";

interface Props {
  readonly kind: ChangeKind;
  readonly evidence: Evidence;
  readonly problems: readonly Problem[];
  /** What the address asks for. */
  readonly start: { readonly condition: string | null; readonly finding: string | null };
}

const byName = (one: Choice, other: Choice): number => one.says.localeCompare(other.says);

const choicesOf = (all: Readonly<Record<string, { readonly id: string; readonly term: string }>>): readonly Choice[] =>
  Object.values(all)
    .map(({ id, term }) => ({ value: id, says: term }))
    .sort(byName);

export function ChangeFields(props: Props) {
  switch (props.kind) {
    case "frequency":
    case "prior":
    case "healthy-rate":
      return <FigureFields {...props} kind={props.kind} />;
    case "condition":
      return <ConditionFields {...props} />;
    case "finding":
      return <FindingFields {...props} />;
    case "source":
      return <SourceFields {...props} />;
  }
}

/** One figure: of which condition, finding or season, and how often of 100. */
function FigureFields({
  kind,
  evidence,
  problems,
  start,
}: Props & { readonly kind: "frequency" | "prior" | "healthy-rate" }) {
  const say = words.own;
  const conditions = choicesOf(evidence.conditions);
  const findings = choicesOf(evidence.findings);
  const [condition, setCondition] = useState(start.condition ?? conditions[0]?.value ?? "");
  const [finding, setFinding] = useState(start.finding ?? findings[0]?.value ?? "");
  const [season, setSeason] = useState<string>(evidenceSeasons[0] ?? "");
  const now = figureNow(evidence, { what: kind, condition, finding, season });
  return (
    <>
      {kind === "healthy-rate" ? null : (
        <ChoiceField
          name="condition"
          label={say.condition}
          problems={problems}
          value={condition}
          onChoose={setCondition}
          choices={conditions}
        />
      )}
      {kind === "prior" ? null : (
        <ChoiceField
          name="finding"
          label={say.finding}
          problems={problems}
          value={finding}
          onChoose={setFinding}
          choices={findings}
        />
      )}
      {kind === "frequency" ? null : (
        <ChoiceField
          name="season"
          label={say.season}
          problems={problems}
          value={season}
          onChoose={setSeason}
          choices={evidenceSeasons.map((value) => ({ value, says: say.seasons[value] }))}
        />
      )}
      <TextField
        name="rate"
        label={say.rate[kind]}
        hint={say.rateNow({ now })}
        problems={problems}
        numeric
        needed
        unit={say.of100Unit}
      />
      <TextField name="outOf" label={say.outOf} hint={say.outOfHint} problems={problems} numeric />
      {kind === "frequency" ? (
        <label className="tick wide">
          <input type="checkbox" name="suppresses" />
          {say.suppresses}
        </label>
      ) : null}
    </>
  );
}

function SeasonFields({
  name,
  head,
  problems,
}: {
  readonly name: string;
  readonly head: string;
  readonly problems: readonly Problem[];
}) {
  const say = words.own;
  return (
    <fieldset className="wide">
      <legend>{head}</legend>
      {evidenceSeasons.map((season) => (
        <TextField
          key={season}
          name={`${name}-${season}`}
          label={say.seasons[season]}
          problems={problems}
          numeric
          needed
          unit={say.of100Unit}
        />
      ))}
    </fieldset>
  );
}

function ConditionFields({ evidence, problems, start }: Props) {
  const say = words.own;
  const [which, choose] = useState(start.condition ?? newOne);
  const old = evidence.conditions[which];
  return (
    <>
      <ChoiceField
        name="condition"
        label={say.condition}
        problems={problems}
        value={which}
        onChoose={choose}
        choices={[{ value: newOne, says: say.newCondition }, ...choicesOf(evidence.conditions)]}
      />
      <TextField key={`term ${which}`} name="term" label={say.term} problems={problems} needed value={old?.term} />
      <ChoiceField
        key={`role ${which}`}
        name="role"
        label={say.role}
        problems={problems}
        value={old?.role ?? "cause"}
        choices={roles.map((value) => ({ value, says: say.roles[value] }))}
      />
      <ChoiceField
        key={`rollUp ${which}`}
        name="rollUp"
        label={say.rollUp}
        problems={problems}
        value={old?.rollUp ?? noneChosen}
        choices={[
          { value: noneChosen, says: say.none },
          ...rollUps.map((value) => ({ value, says: words.could.groups[value] })),
        ]}
      />
      <ChoiceField
        key={`urgency ${which}`}
        name="urgency"
        label={say.urgency}
        problems={problems}
        value={old?.urgency ?? "within-a-month"}
        choices={urgencies.map((value) => ({ value, says: say.urgencies[value] }))}
      />
      {which === newOne ? <SeasonFields name="prior" head={say.priorBySeason} problems={problems} /> : null}
    </>
  );
}

function FindingFields({ evidence, problems, start }: Props) {
  const say = words.own;
  const [which, choose] = useState(start.finding ?? newOne);
  const old = evidence.findings[which];
  return (
    <>
      <ChoiceField
        name="finding"
        label={say.finding}
        problems={problems}
        value={which}
        onChoose={choose}
        choices={[{ value: newOne, says: say.newFinding }, ...choicesOf(evidence.findings)]}
      />
      <TextField key={`term ${which}`} name="term" label={say.term} problems={problems} needed value={old?.term} />
      <ChoiceField
        key={`kind ${which}`}
        name="kind"
        label={say.kind}
        problems={problems}
        value={old?.kind ?? "sign"}
        choices={(["sign", "circumstance"] as const).map((value) => ({ value, says: say.kinds[value] }))}
      />
      <TextField
        key={`minutes ${which}`}
        name="minutes"
        label={say.minutes}
        problems={problems}
        numeric
        needed
        value={old ? String(old.minutes) : undefined}
      />
      <TextField
        key={`question ${which}`}
        name="question"
        label={say.question}
        problems={problems}
        needed
        wide
        value={old?.question}
      />
      <LongField
        key={`lookFor ${which}`}
        name="lookFor"
        label={say.lookFor}
        problems={problems}
        needed
        wide
        value={old?.lookFor}
      />
      {which === newOne ? <SeasonFields name="healthy" head={say.healthyBySeason} problems={problems} /> : null}
    </>
  );
}

function SourceFields({ problems }: Props) {
  const say = words.own;
  return (
    <>
      <TextField name="title" label={say.title} problems={problems} needed wide />
      <TextField name="authors" label={say.authors} problems={problems} />
      <TextField name="year" label={say.year} problems={problems} numeric />
      <TextField name="where" label={say.where} problems={problems} needed />
      <TextField name="readOfIt" label={say.readOfIt} problems={problems} needed />
    </>
  );
}
