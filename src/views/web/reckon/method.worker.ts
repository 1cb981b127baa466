/** Answers the methods of the reckoner away from the page's own thread. */
import { nearestName, type Verb, verbNamed, verbs } from "../../../reasoning/index.ts";
import type { MethodAnswer, MethodQuestion } from "./method-messages.ts";

self.onmessage = ({ data }: MessageEvent<MethodQuestion>) => {
  const verb = verbNamed(data.verb);
  if (!verb) throw new RangeError(`no verb ${data.verb}; nearest ${nearestName(data.verb, namesOf(verbs))}`);
  if (data.kind === "describe") {
    const { summary, assumptions, source, example, inputShape } = verb;
    send({ kind: "described", verb: verb.name, method: { summary, assumptions, source, example, inputShape } });
    return;
  }
  const { number, question } = data;
  const reply = verb.ask(
    question,
    told((share) => send({ kind: "progress", number, share })),
  );
  send({ kind: "answered", number, reply });
};

const namesOf = (all: readonly Verb[]): readonly string[] => all.map(({ name }) => name);

const send = (answer: MethodAnswer): void => self.postMessage(answer);

/** At most twenty messages, however often the method tells how far it is. */
function told(tell: (share: number) => void): (share: number) => void {
  let last = 0;
  return (share) => {
    if (share - last < 0.05) return;
    last = share;
    tell(share);
  };
}
