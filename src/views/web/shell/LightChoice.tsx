/** "Light: desk": says the light and lets a hand change it. */
import { words } from "../words.ts";
import { chooseLight, type Light, lights } from "./light.ts";

export function LightChoice({ chosen, byWork }: { readonly chosen: Light | null; readonly byWork: Light }) {
  const say = words.shell;
  return (
    <label className="light-choice">
      {say.light}:{" "}
      <select
        className="act"
        value={chosen ?? ""}
        onChange={(event) => chooseLight(lights.find((light) => light === event.target.value) ?? null)}
      >
        <option value="">{say.lightByWork({ light: say.lights[byWork] })}</option>
        {lights.map((light) => (
          <option key={light} value={light}>
            {say.lights[light]}
          </option>
        ))}
      </select>
    </label>
  );
}
