/** The call in its own words, as it was written down. */
import { type CaseState, settled } from "../../../../casebook/index.ts";
import { words } from "../../words.ts";

export function Story({ state }: { readonly state: CaseState }) {
  const opened = settled(state.record);
  if (!opened) return null;
  const say = words.case;
  const parts: readonly (readonly [string, string | undefined])[] = [
    [say.question, opened.question],
    [say.story, opened.story],
    [say.alreadyDone, opened.alreadyDone],
  ];
  return (
    <dl className="story">
      {parts.map(([name, text]) =>
        text ? (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{text}</dd>
          </div>
        ) : null,
      )}
    </dl>
  );
}
