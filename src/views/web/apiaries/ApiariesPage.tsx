/** Apiaries: the places on record, and a form that registers one. */
import { Link, useLocation } from "wouter";
import { apiaryList, readApiaryForm } from "../../model/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { useForm } from "../parts/Form.tsx";
import { useCasebook } from "../store/context.ts";
import { newId } from "../store/new-id.ts";
import { words } from "../words.ts";
import { ApiaryFields } from "./ApiaryFields.tsx";
import "./apiaries.css";

export default function ApiariesPage() {
  const { casebook } = useCasebook();
  const say = words.apiaries;
  const apiaries = apiaryList(casebook);
  const colonies = apiaries.reduce((sum, apiary) => sum + apiary.colonies.length, 0);
  return (
    <main id="page" className="plain">
      <Answer text={apiaries.length === 0 ? say.none : say.answer({ apiaries: apiaries.length, colonies })} />
      {apiaries.length > 0 ? (
        <table className="apiaries-table">
          <thead>
            <tr>
              <th scope="col">{say.columns.name}</th>
              <th scope="col">{say.columns.district}</th>
              <th scope="col" className="num-r">
                {say.columns.colonies}
              </th>
              <th scope="col" className="num-r">
                {say.columns.cases}
              </th>
              <th scope="col">{say.columns.weather}</th>
            </tr>
          </thead>
          <tbody>
            {apiaries.map((apiary) => (
              <tr key={apiary.id}>
                <td>
                  <Link className="act" href={`/apiaries/${apiary.id}`}>
                    {apiary.record?.name ?? say.inConflict}
                  </Link>{" "}
                  <span className="c q3">{apiary.record?.code}</span>
                </td>
                <td>{apiary.record?.place}</td>
                <td className="num-r">{apiary.colonies.length}</td>
                <td className="num-r">{apiary.cases.length}</td>
                <td className="q2">{apiary.weather ? say.has : say.hasNot}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
      <p className="note to-labels">
        <Link className="act" href="/labels">
          {say.toLabels}
        </Link>
      </p>
      <RegisterForm taken={apiaries.flatMap((apiary) => apiary.record?.code ?? [])} />
    </main>
  );
}

function RegisterForm({ taken }: { readonly taken: readonly string[] }) {
  const { record, today } = useCasebook();
  const [, go] = useLocation();
  const say = words.apiaries;
  const { problems, onSubmit } = useForm(
    (fields) => readApiaryForm(fields, taken),
    async (data) => {
      const id = newId();
      await record([{ kind: "apiary-registered", at: today, about: [id], data }]);
      go(`/apiaries/${id}`);
    },
  );
  return (
    <form className="form" onSubmit={onSubmit} noValidate>
      <fieldset>
        <legend>{say.registerHead}</legend>
        <ApiaryFields problems={problems} />
      </fieldset>
      <p className="acts">
        <button type="submit" className="press">
          {say.register}
        </button>
      </p>
    </form>
  );
}
