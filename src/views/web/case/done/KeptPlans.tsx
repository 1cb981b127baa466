/** Plans that were written down, with their calendar file. */
import { Link } from "wouter";
import { type CaseState, type PlanState, settled } from "../../../../casebook/index.ts";
import { type ControlId, controls } from "../../../../knowledge/index.ts";
import { apiaryOf, colonyCode } from "../../../model/index.ts";
import { saveText } from "../../parts/save.ts";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";

export function KeptPlans({ state, plans }: { readonly state: CaseState; readonly plans: readonly PlanState[] }) {
  const { casebook } = useCasebook();
  const say = words.done;
  const kept = plans.flatMap((plan) => {
    const body = settled(plan.record);
    return body ? [{ plan, body }] : [];
  });
  if (kept.length === 0) return null;
  return (
    <section aria-label={say.keptPlans} className="kept-plans">
      {kept.map(({ plan, body }) => {
        const codes = body.colonies.map((id) => colonyCode(casebook, state.id, id));
        const term = controls[body.control as ControlId]?.term ?? body.control;
        const calendar = async () => {
          const { planCalendar } = await import("../../../../transfer/index.ts");
          const text = planCalendar({
            plan: plan.id,
            versions: [body],
            name: say.calendarName({
              code: settled(state.record)?.code ?? "",
              place: apiaryOf(casebook, state)?.name ?? "",
            }),
            titleOf: (step) =>
              say.title({
                what: `${say.stepShort[step.kind]}, ${term}`,
                grams: step.gramsPerColony,
                inAll: step.gramsInAll,
                colonies: codes,
              }),
            madeAt: new Date().toISOString(),
          });
          saveText(`plan-${settled(state.record)?.code ?? plan.id}.ics`, "text/calendar", text);
        };
        return (
          <div key={plan.id}>
            <div className="head">
              <h2>
                {term}, {codes.join(", ")}
              </h2>
              <span className="note q3">{say.planKept({ version: body.version, on: body.madeOn })}</span>
              <button type="button" className="act" onClick={() => void calendar()}>
                {say.calendar}
              </button>
              <Link className="act" href={`/cases/${state.id}/6`}>
                {say.markSteps}
              </Link>
            </div>
            <table className="plan">
              <tbody>
                {body.steps.map((step) => (
                  <tr key={step.step}>
                    <td className="when">
                      <time dateTime={step.on}>{words.case.day({ day: step.on })}</time>
                    </td>
                    <td className="what">
                      <b>{say.stepShort[step.kind]}</b>
                      {step.gramsPerColony === null ? "" : `, ${step.gramsPerColony} g`}
                    </td>
                    <td className="note">{step.note}</td>
                    <td className="do" />
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        );
      })}
    </section>
  );
}
