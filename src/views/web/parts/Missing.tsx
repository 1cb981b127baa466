/** A page for what is not here: says so and leads on. */
import { Link } from "wouter";
import { words } from "../words.ts";
import { Answer } from "./Answer.tsx";

interface Props {
  readonly text: string;
  /** Where to go from here; the list of cases unless said otherwise. */
  readonly to?: { readonly href: string; readonly says: string };
}

export function Missing({ text, to = { href: "/cases", says: words.shell.toCases } }: Props) {
  return (
    <main id="page" className="plain">
      <Answer text={text} />
      <p>
        <Link className="act" href={to.href}>
          {to.says}
        </Link>
      </p>
    </main>
  );
}
