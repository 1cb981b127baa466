/** A field for a password: it can be shown, pasted into, and filled in by the browser. */
import { useId } from "react";

export function SecretField(props: {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  readonly fill: "current-password" | "new-password";
  /** It stands in the place of what was pressed. */
  readonly takesFocus?: true;
}) {
  const { name, label, hint, fill, takesFocus = false } = props;
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {hint ? (
        <p className="hint" id={`${id}-hint`}>
          {hint}
        </p>
      ) : null}
      <input
        id={id}
        name={name}
        type="password"
        required
        autoComplete={fill}
        // biome-ignore lint/a11y/noAutofocus: what was pressed is gone, and this stands in its place
        autoFocus={takesFocus}
        aria-describedby={hint ? `${id}-hint` : undefined}
      />
    </div>
  );
}

/** What stands in the way, told at once. */
export function Says({ says }: { readonly says: readonly string[] }) {
  return (
    <div role="alert">
      {says.map((each) => (
        <p key={each} className="trouble">
          {each}
        </p>
      ))}
    </div>
  );
}
