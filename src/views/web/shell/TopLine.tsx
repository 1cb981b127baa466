/** The top line: the tool, its areas, what is saved and sent, the light. */
import type { ReactNode } from "react";
import { Link } from "wouter";
import { type Area, areaHome, routes } from "../routes.ts";
import { words } from "../words.ts";

const areas = (Object.keys(areaHome) as Area[]).filter((area) => routes.some((route) => route.area === area));

export function TopLine({
  area,
  kept,
  light,
}: {
  readonly area: Area | null;
  readonly kept: ReactNode;
  readonly light: ReactNode;
}) {
  const say = words.shell;
  return (
    <header className="top">
      <a className="skip" href="#page">
        {say.skip}
      </a>
      <Link className="tool" href="/cases">
        {say.tool}
      </Link>
      <nav aria-label={say.areas}>
        {areas.map((each) => (
          <Link key={each} href={areaHome[each]} aria-current={each === area ? "page" : undefined}>
            {say.area[each]}
          </Link>
        ))}
      </nav>
      <div className="right">
        {kept}
        {light}
      </div>
    </header>
  );
}
