/** Flows, supers and treatments: spans of days, each with a line to add one. */
import type { ReactNode } from "react";
import type { EntryDraft } from "../../../journal/index.ts";
import type { Result } from "../../../units/index.ts";
import {
  type ApiaryView,
  type Fields,
  type Listed,
  readFlowForm,
  readSupersForm,
  readTreatmentForm,
  takeBackDraft,
} from "../../model/index.ts";
import { TextField, useForm } from "../parts/Form.tsx";
import { shownWeight, useUnits } from "../parts/units.ts";
import { useCasebook } from "../store/context.ts";
import { newId } from "../store/new-id.ts";
import { words } from "../words.ts";

interface SpansProps<Body> {
  readonly apiary: string;
  readonly id: string;
  readonly head: string;
  readonly none: string;
  readonly rows: readonly Listed<Body>[];
  readonly says: (body: Body) => ReactNode;
  readonly read: (fields: Fields) => Result<Body>;
  readonly draft: (body: Body) => EntryDraft;
  readonly fields: (problems: ReturnType<typeof useForm>["problems"]) => ReactNode;
  readonly add: string;
  /** The entry that ends a span today; none where a span has both its days from the start. */
  readonly end?: (row: Listed<Body>) => EntryDraft | null;
}

function Spans<Body>({ apiary, id, head, none, rows, says, read, draft, fields, add, end }: SpansProps<Body>) {
  const { record, today } = useCasebook();
  const { takeBack, takenBack } = words.apiaries;
  const { problems, onSubmit } = useForm(read, async (body) => {
    await record([draft(body)]);
  });
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{head}</h2>
      {rows.length === 0 ? (
        <p className="q2">{none}</p>
      ) : (
        <ul className="rows">
          {rows.map((row) => (
            <li key={`${row.id} ${JSON.stringify(row.value)}`}>
              {says(row.value)} {row.inConflict ? <b>{words.apiaries.inConflict}</b> : null}
              <EndToday draft={end?.(row) ?? null} />{" "}
              <button
                type="button"
                className="act"
                onClick={() => void record([takeBackDraft(apiary, row, { reason: takenBack, today })])}
              >
                {takeBack}
              </button>
            </li>
          ))}
        </ul>
      )}
      <form className="line-form" onSubmit={onSubmit} noValidate>
        {fields(problems)}
        <button type="submit" className="press quiet">
          {add}
        </button>
      </form>
    </section>
  );
}

function EndToday({ draft }: { readonly draft: EntryDraft | null }) {
  const { record } = useCasebook();
  if (!draft) return null;
  return (
    <button type="button" className="act" onClick={() => void record([draft])}>
      {words.apiaries.offToday}
    </button>
  );
}

export function Flows({ view }: { readonly view: ApiaryView }) {
  const { today } = useCasebook();
  const say = words.apiaries;
  return (
    <Spans
      apiary={view.id}
      id="h-flows"
      head={say.flowsHead}
      none={say.noFlows}
      rows={view.flows}
      says={(flow) => (
        <>
          <b>{flow.name}</b> {say.spanInYear(flow)}
        </>
      )}
      read={readFlowForm}
      draft={(data) => ({ kind: "flow-recorded", at: today, about: [view.id, newId()], data })}
      fields={(problems) => (
        <>
          <TextField name="name" label={say.flowName} problems={problems} />
          <TextField name="from" type="date" label={say.from} problems={problems} />
          <TextField name="to" type="date" label={say.to} problems={problems} />
        </>
      )}
      add={say.addFlow}
    />
  );
}

export function Supers({ view }: { readonly view: ApiaryView }) {
  const { today } = useCasebook();
  const say = words.apiaries;
  return (
    <Spans
      apiary={view.id}
      id="h-supers"
      head={say.supersHead}
      none={say.noSupers}
      rows={view.supers}
      says={(supers) => say.span({ from: supers.on, to: supers.off })}
      read={readSupersForm}
      draft={(data) => ({ kind: "supers-recorded", at: data.on, about: [view.id, newId()], data })}
      fields={(problems) => (
        <>
          <TextField name="on" type="date" label={say.on} problems={problems} />
          <TextField name="off" type="date" label={say.off} hint={say.offHint} problems={problems} />
        </>
      )}
      add={say.addSupers}
      end={(row) =>
        row.value.off === null && row.value.on <= today
          ? {
              kind: "supers-recorded",
              at: today,
              about: [view.id, row.id],
              replaces: row.entries,
              data: { ...row.value, off: today },
            }
          : null
      }
    />
  );
}

export function Treatments({ view }: { readonly view: ApiaryView }) {
  const { today } = useCasebook();
  const units = useUnits();
  const say = words.apiaries;
  const inColonies = (ids: readonly string[]) =>
    ids.length === 0
      ? ""
      : say.inColonies({ colonies: view.colonies.filter(({ id }) => ids.includes(id)).map(({ code }) => code) });
  return (
    <Spans
      apiary={view.id}
      id="h-treatments"
      head={say.treatmentsHead}
      none={say.noTreatments}
      rows={view.treatments}
      says={(treatment) => {
        const amount = treatment.grams === undefined ? null : shownWeight(treatment.grams, units);
        return (
          <>
            <b>{treatment.activeIngredient}</b> {say.span({ from: treatment.on, to: treatment.off })}{" "}
            <span className="q2">
              {amount ? say.amountSays({ amount: amount.value, unit: amount.unit }) : null}{" "}
              {inColonies(treatment.colonies)}
            </span>
          </>
        );
      }}
      read={(fields) => readTreatmentForm(fields, units)}
      draft={(data) => ({ kind: "treatment-recorded", at: data.on, about: [view.id, newId()], data })}
      fields={(problems) => (
        <>
          <TextField name="activeIngredient" label={say.ingredient} hint={say.ingredientHint} problems={problems} />
          <TextField
            name="grams"
            label={say.amount}
            numeric
            unit={units.weight === "ounces" ? say.ounces : say.grams}
            problems={problems}
          />
          <TextField name="on" type="date" label={say.on} problems={problems} />
          <TextField name="off" type="date" label={say.off} hint={say.offHint} problems={problems} />
        </>
      )}
      add={say.addTreatment}
      end={(row) =>
        row.value.off === null && row.value.on <= today
          ? {
              kind: "treatment-recorded",
              at: today,
              about: [view.id, row.id],
              replaces: row.entries,
              data: { ...row.value, off: today },
            }
          : null
      }
    />
  );
}
