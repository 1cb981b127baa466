/** Opening a case: where, the call in its own words, the colonies; then on to question 1. */
import { useState } from "react";
import { useLocation } from "wouter";
import { settled } from "../../../casebook/index.ts";
import {
  apiaryCode,
  caseCode,
  coloniesOfApiary,
  noApiaryChosen,
  openCaseDrafts,
  readOpening,
} from "../../model/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { ChoiceField, LongField, TextField, useForm } from "../parts/Form.tsx";
import { useCasebook } from "../store/context.ts";
import { newId } from "../store/new-id.ts";
import { words } from "../words.ts";

const fresh = "new";

export default function OpenCasePage() {
  const { casebook, today, author, signAs, record, may } = useCasebook();
  const [, go] = useLocation();
  const say = words.cases.form;
  const places = Object.values(casebook.apiaries).flatMap((apiary) => {
    const registered = settled(apiary.record);
    return registered ? [{ id: apiary.id, ...registered }] : [];
  });
  const asked = new URLSearchParams(location.search).get("apiary");
  const [apiary, setApiary] = useState(
    places.some((place) => place.id === asked) ? (asked ?? fresh) : places.length > 0 ? noApiaryChosen : fresh,
  );
  const [name, setName] = useState("");
  const [code, setCode] = useState<string | null>(null);
  const [district, setDistrict] = useState("");
  const chosen = places.find((place) => place.id === apiary);
  const takenApiaries = places.map((place) => place.code);
  const takenCases = Object.values(casebook.cases).flatMap((each) => settled(each.record)?.code ?? []);
  const proposed = caseCode(chosen?.place ?? district, Number(today.slice(0, 4)), takenCases);
  const known = coloniesOfApiary(casebook, chosen?.id ?? null);
  const apiaryLetters = code ?? (name.trim() ? apiaryCode(name, takenApiaries) : "");
  const { problems, onSubmit } = useForm(
    (fields) => readOpening({ fields, apiary: apiary === fresh ? null : apiary, takenApiaries, takenCases, today }),
    async (opening) => {
      await signAs(opening.author);
      const { caseId, drafts } = openCaseDrafts({ opening, casebook, today, newId });
      await record(drafts);
      go(`/cases/${caseId}/1`);
    },
  );
  if (!may("case-opened"))
    return (
      <main id="page" className="plain">
        <Answer text={words.shell.notYours} />
      </main>
    );
  return (
    <main id="page" className="plain">
      <Answer text={say.title} under={say.under} />
      <form className="form" onSubmit={onSubmit} noValidate>
        <fieldset>
          <legend>{say.apiaryHead}</legend>
          {places.length > 0 ? (
            <ChoiceField
              name="apiary"
              label={say.apiary}
              problems={problems}
              value={apiary}
              onChoose={setApiary}
              needed
              choices={[
                { value: noApiaryChosen, says: say.chooseApiary },
                ...places.map((place) => ({ value: place.id, says: words.cases.form.placeChoice(place) })),
                { value: fresh, says: say.newApiary },
              ]}
              wide
            />
          ) : null}
          {apiary !== fresh ? null : (
            <>
              <TextField
                name="apiaryName"
                label={say.apiaryName}
                needed
                problems={problems}
                value={name}
                onType={setName}
              />
              <TextField
                name="apiaryCode"
                label={say.apiaryCode}
                hint={say.apiaryCodeHint}
                needed
                problems={problems}
                value={apiaryLetters}
                onType={setCode}
              />
              <TextField
                name="district"
                label={say.district}
                hint={say.districtHint}
                needed
                problems={problems}
                value={district}
                onType={setDistrict}
              />
              <TextField
                name="latitude"
                label={say.latitude}
                hint={say.latitudeHint}
                numeric
                unit="°"
                problems={problems}
              />
            </>
          )}
        </fieldset>
        <fieldset>
          <legend>{say.callHead}</legend>
          <TextField name="openedOn" type="date" label={say.openedOn} value={today} problems={problems} />
          <TextField name="beganOn" type="date" label={say.beganOn} hint={say.beganOnHint} problems={problems} />
          <TextField name="question" label={say.question} hint={say.questionHint} needed problems={problems} wide />
          <LongField name="story" label={say.story} problems={problems} wide rows={4} />
          <LongField name="alreadyDone" label={say.alreadyDone} hint={say.alreadyDoneHint} problems={problems} wide />
        </fieldset>
        <fieldset>
          <legend>{say.coloniesHead}</legend>
          {known.length > 0 ? (
            <fieldset className="wide ticks">
              <legend className="hint">{say.coloniesKnown}</legend>
              {known.map((colony) => (
                <label key={colony.id} className="tick">
                  <input type="checkbox" name={`colony:${colony.id}`} /> <span className="c">{colony.code}</span>
                </label>
              ))}
            </fieldset>
          ) : null}
          <TextField
            name="newColonies"
            label={say.coloniesNew}
            hint={say.coloniesNewHint}
            numeric
            value="0"
            problems={problems}
          />
        </fieldset>
        <fieldset>
          <legend>{say.adminHead}</legend>
          <TextField key={proposed} name="code" label={say.code} needed problems={problems} value={proposed} />
          <TextField name="due" type="date" label={say.due} hint={say.dueHint} problems={problems} />
          <TextField name="waitsOn" label={say.waitsOn} hint={say.waitsOnHint} problems={problems} />
          <TextField name="author" label={say.author} hint={say.authorHint} needed value={author} problems={problems} />
        </fieldset>
        <p className="acts">
          <button type="submit" className="press">
            {say.submit}
          </button>
        </p>
      </form>
    </main>
  );
}
