/** A part of the page under its heading. */
import { type ReactNode, useId } from "react";

export function Part({
  head,
  under,
  children,
}: {
  readonly head: string;
  readonly under?: string;
  readonly children: ReactNode;
}) {
  const id = useId();
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{head}</h2>
      {under ? <p className="q2">{under}</p> : null}
      {children}
    </section>
  );
}
