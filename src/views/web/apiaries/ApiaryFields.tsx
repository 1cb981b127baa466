/** The fields of an apiary's record, empty or as they stand. */
import type { BodyOf } from "../../../journal/index.ts";
import type { Problem } from "../../../units/index.ts";
import { TextField } from "../parts/Form.tsx";
import { words } from "../words.ts";

interface Props {
  readonly record?: BodyOf<"apiary-registered"> | null;
  readonly problems: readonly Problem[];
}

export function ApiaryFields({ record, problems }: Props) {
  const say = words.apiaries;
  const shown = (value: string | number | undefined) => (value === undefined ? "" : String(value));
  return (
    <>
      <TextField name="name" label={say.name} needed problems={problems} value={shown(record?.name)} />
      <TextField
        name="code"
        label={say.code}
        hint={say.codeHint}
        needed
        problems={problems}
        value={shown(record?.code)}
      />
      <TextField
        name="place"
        label={say.district}
        hint={say.districtHint}
        needed
        problems={problems}
        value={shown(record?.place)}
      />
      <TextField
        name="registration"
        label={say.registration}
        hint={say.registrationHint}
        problems={problems}
        value={shown(record?.registration)}
      />
      <TextField
        name="latitude"
        label={say.latitude}
        hint={say.latitudeHint}
        numeric
        unit="°"
        problems={problems}
        value={shown(record?.latitude)}
      />
      <TextField
        name="longitude"
        label={say.longitude}
        numeric
        unit="°"
        problems={problems}
        value={shown(record?.longitude)}
      />
      <TextField
        name="elevationMetres"
        label={say.elevation}
        numeric
        unit="m"
        problems={problems}
        value={shown(record?.elevationMetres)}
      />
    </>
  );
}
