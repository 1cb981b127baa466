/** °C and grams, or °F and ounces: one switch for what is typed and shown. */
import { words } from "../words.ts";
import { chooseUnits, useUnits } from "./units.ts";

export function UnitsChoice() {
  const units = useUnits();
  const say = words.apiaries;
  const american = units.temperature === "fahrenheit";
  return (
    <fieldset className="units">
      <legend className="vh">{say.unitsHead}</legend>
      <label className="tick">
        <input type="radio" name="units" checked={!american} onChange={() => chooseUnits("metric")} />
        {say.celsius}, {say.grams}
      </label>
      <label className="tick">
        <input type="radio" name="units" checked={american} onChange={() => chooseUnits("american")} />
        {say.fahrenheit}, {say.ounces}
      </label>
    </fieldset>
  );
}
