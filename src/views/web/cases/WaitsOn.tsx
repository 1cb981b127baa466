/** The column at the left of the list: whom the cases wait on. Choosing one keeps only those. */
import type { CasesView } from "../../model/index.ts";
import { words } from "../words.ts";

interface Props {
  readonly view: CasesView;
  readonly who: string | null;
  readonly choose: (who: string | null) => void;
}

export function WaitsOn({ view, who, choose }: Props) {
  const say = words.cases;
  const all = [
    { who: null, says: say.everyone, count: view.open },
    ...view.waiting.map((each) => ({ ...each, says: each.who })),
  ];
  return (
    <nav className="who" aria-label={say.waitsOnHead}>
      <h2>{say.waitsOnHead}</h2>
      <ul>
        {all.map((each) => (
          <li
            key={each.says}
            className={each.who === who ? "open" : undefined}
            style={{ "--n": Math.min(each.count, 8) } as React.CSSProperties}
          >
            <button type="button" aria-pressed={each.who === who} onClick={() => choose(each.who)}>
              {each.says}
              <span className="c">{each.count}</span>
            </button>
          </li>
        ))}
      </ul>
      {view.closed.answered + view.closed.withoutAnswer > 0 ? (
        <>
          <h2 className="gap">{say.closedHead}</h2>
          <ul>
            <li style={{ "--n": Math.min(view.closed.answered, 8) } as React.CSSProperties}>
              <span className="row">
                {say.answered}
                <span className="c">{view.closed.answered}</span>
              </span>
            </li>
            <li style={{ "--n": Math.min(view.closed.withoutAnswer, 8) } as React.CSSProperties}>
              <span className="row">
                {say.withoutAnswer}
                <span className="c">{view.closed.withoutAnswer}</span>
              </span>
            </li>
          </ul>
        </>
      ) : null}
    </nav>
  );
}
