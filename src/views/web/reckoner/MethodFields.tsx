/** The fields of a method, by their kind. */
import type { Problem } from "../../../units/index.ts";
import type { MethodField } from "../../model/index.ts";
import { ChoiceField, Field, LongField, TextField } from "../parts/Form.tsx";

export function MethodFields({
  fields,
  problemsOf,
}: {
  readonly fields: readonly MethodField[];
  readonly problemsOf: (name: string) => readonly Problem[];
}) {
  return fields.map((field) => <One key={field.name} field={field} problems={problemsOf(field.name)} />);
}

function One({ field, problems }: { readonly field: MethodField; readonly problems: readonly Problem[] }) {
  const { name, label, hint, kind, typed, choices } = field;
  // A problem of a line stands at its field.
  const own = problems.map((each) => ({ ...each, field: name }));
  const shared = { name, label, hint, problems: own };
  switch (kind) {
    case "choice":
      return <ChoiceField {...shared} choices={choices} value={typed} />;
    case "switch":
      return <Field {...shared}>{(input) => <input {...input} type="checkbox" defaultChecked={typed !== ""} />}</Field>;
    case "rows":
    case "grid":
      return <LongField {...shared} rows={Math.min(12, Math.max(4, typed.split("\n").length + 1))} value={typed} />;
    default:
      return <TextField {...shared} numeric={kind === "number"} value={typed} />;
  }
}
