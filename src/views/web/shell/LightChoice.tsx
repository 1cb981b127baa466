/** "Light: desk": says the light and lets a hand change it. */
import { useRef } from "react";
import { words } from "../words.ts";
import { chooseLight, type Light, lights } from "./light.ts";

export function LightChoice({ chosen, byWork }: { readonly chosen: Light | null; readonly byWork: Light }) {
  const menu = useRef<HTMLDetailsElement>(null);
  const say = words.shell;
  const choose = (light: Light | null) => {
    chooseLight(light);
    if (menu.current) menu.current.open = false;
    menu.current?.querySelector("summary")?.focus();
  };
  const all: readonly (Light | null)[] = [null, ...lights];
  return (
    <details
      ref={menu}
      className="light-choice"
      onKeyDown={(event) => {
        if (event.key === "Escape" && menu.current) menu.current.open = false;
      }}
      onBlur={(event) => {
        if (menu.current && !event.currentTarget.contains(event.relatedTarget)) menu.current.open = false;
      }}
    >
      <summary className="act">{say.lightNow({ light: say.lights[chosen ?? byWork] })}</summary>
      <ul>
        {all.map((light) => (
          <li key={light ?? ""}>
            <button type="button" aria-pressed={light === chosen} onClick={() => choose(light)}>
              {light === null ? say.lightByWork({ light: say.lights[byWork] }) : say.lights[light]}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
