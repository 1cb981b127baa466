/** The vials of the case on one rule: locked, being read, waiting. */
import { Link } from "wouter";
import type { BenchView } from "../../model/index.ts";
import { words } from "../words.ts";

export function Rack({ view }: { readonly view: BenchView }) {
  const say = words.bench;
  if (view.rack.length < 2) return null;
  return (
    <nav className="rack" aria-label={say.rackHead}>
      <p>
        {say.rackHead}
        <span>{say.rack({ vials: view.rack.length })}</span>
      </p>
      <ol>
        {view.rack.map((vial) => (
          <li key={vial.id} className={vial.isHere ? "now" : vial.state === "read" ? "locked" : undefined}>
            <Link href={`/bench/${vial.id}`} aria-current={vial.isHere ? "page" : undefined}>
              {vial.code}
              <span>{vial.says}</span>
            </Link>
          </li>
        ))}
      </ol>
    </nav>
  );
}
