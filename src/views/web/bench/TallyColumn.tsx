/** What the bees amount to so far; in a blind reading only how many were read. */
import type { bench } from "../../../reasoning/index.ts";
import { words } from "../words.ts";

export function TallyColumn({ tally, isBlind }: { readonly tally: bench.Tally; readonly isBlind: boolean }) {
  const say = words.bench;
  if (isBlind)
    return (
      <section className="tally">
        <h2>{say.tallyBlind({ read: tally.read })}</h2>
        <p>{say.tallyBlindNote}</p>
      </section>
    );
  const rows = [
    ["clear", tally.clear],
    ["darkNoMite", tally.darkNoMite],
    ["partlyRead", tally.partlyRead],
    ["unreadable", tally.unreadable],
    ["lost", tally.lost],
  ] as const;
  return (
    <section className="tally">
      <h2>{say.tallyHead({ positive: tally.positive, read: tally.read })}</h2>
      <dl>
        {rows.map(([key, count]) => (
          <div key={key}>
            <dt>{say.tally[key]}</dt>
            <dd>{count}</dd>
          </div>
        ))}
      </dl>
      <p>{say.outside}</p>
    </section>
  );
}
