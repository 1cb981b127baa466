/** The one answer of a page: a sentence in the largest type, and a smaller one under it. */
import { Rich } from "./Rich.tsx";

export function Answer({ text, under }: { readonly text: string; readonly under?: string | undefined }) {
  return (
    <>
      <h1 className="answer">
        <Rich text={text} />
      </h1>
      {under ? (
        <p className="under">
          <Rich text={under} />
        </p>
      ) : null}
    </>
  );
}
