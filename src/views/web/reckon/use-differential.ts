/** Asks the reckoner and keeps the newest answer; the old one stays in sight until the new one is there. */
import { useEffect, useRef, useState } from "react";
import type { differential } from "../../../reasoning/index.ts";
import { fullDraws } from "../../model/index.ts";
import type { Question, Reply } from "./messages.ts";

/** The newest answer to `input` under `own` evidence; null before the first. `isFresh` is false while a newer input is being reckoned. */
export function useDifferential(
  input: differential.AnyInput | null,
  own: Question["own"],
  compare: Question["compare"] = null,
): {
  readonly reply: Reply | null;
  readonly isFresh: boolean;
} {
  const [reply, setReply] = useState<Reply | null>(null);
  const [asked, setAsked] = useState(0);
  const worker = useRef<Worker | null>(null);
  const number = useRef(0);
  const text = input === null ? null : JSON.stringify({ input, own, compare });
  useEffect(() => {
    const made = new Worker(new URL("./differential.worker.ts", import.meta.url), { type: "module" });
    made.onmessage = (event: MessageEvent<Reply>) => {
      if (event.data.number === number.current) setReply(event.data);
    };
    worker.current = made;
    return () => {
      made.terminate();
      worker.current = null;
    };
  }, []);
  useEffect(() => {
    if (text === null) return;
    number.current += 1;
    setAsked(number.current);
    const question: Question = { number: number.current, ...JSON.parse(text), fullDraws };
    worker.current?.postMessage(question);
  }, [text]);
  return { reply, isFresh: reply !== null && reply.number === asked };
}
