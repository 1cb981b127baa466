/** An act that cannot simply be taken back: pressed once it asks, pressed again it is done. */
import { useState } from "react";
import { accountWords } from "../../words/index.ts";

export function Sure({ says, sure, act }: { readonly says: string; readonly sure: string; readonly act: () => void }) {
  const [isAsked, setAsked] = useState(false);
  if (!isAsked)
    return (
      <button type="button" className="act" onClick={() => setAsked(true)}>
        {says}
      </button>
    );
  return (
    <span className="sure">
      <button
        type="button"
        className="press"
        // biome-ignore lint/a11y/noAutofocus: what was pressed is gone, and this stands in its place
        autoFocus
        onClick={() => {
          setAsked(false);
          act();
        }}
      >
        {sure}
      </button>
      <button type="button" className="act" onClick={() => setAsked(false)}>
        {accountWords.members.no}
      </button>
    </span>
  );
}
