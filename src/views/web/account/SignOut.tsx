/** Signing out: asked whether the records of this device stay or go; they go only when all of them were sent. */
import { useState } from "react";
import { accountWords } from "../../words/index.ts";
import { SaveJournal } from "../shell/SaveJournal.tsx";
import { useCasebook } from "../store/context.ts";
import { forgetKept } from "../store/use-cleared.ts";
import { ask } from "./ask.ts";
import { leaveDevice } from "./leave.ts";
import { Says } from "./SecretField.tsx";
import { useSession } from "./SessionProvider.tsx";
import { forgetSent, forgetTraces, type NotSent, notSentOf, type SignedIn } from "./standing.ts";

export function SignOut({ member }: { readonly member: SignedIn }) {
  const { take, tellStayed } = useSession();
  const { isDemonstration } = useCasebook();
  /** What was not sent, once it was asked; null before, and "unreadable" where the device does not tell. */
  const [left, setLeft] = useState<NotSent | "unreadable" | null>(null);
  const [says, setSays] = useState<readonly string[]>([]);
  const [isBusy, setBusy] = useState(false);
  const say = accountWords.signOut;
  const open = async () => {
    setSays([]);
    setLeft(await notSentOf(member).catch(() => "unreadable" as const));
  };
  const leave = async (removes: boolean) => {
    setBusy(true);
    setSays([]);
    const end = await leaveDevice(removes, {
      notSent: () => notSentOf(member),
      end: async () => (await ask("DELETE", "/api/session", accountWords.signIn.unreached)).ok,
      forget: () => forgetSent(member),
    });
    setBusy(false);
    if (end.how === "not-sent") return setLeft(end.left);
    if (end.how === "unreadable") return setLeft("unreadable");
    if (end.how === "unreached") return setSays([say.unreached]);
    if (end.how === "gone") {
      forgetTraces(member);
      forgetKept({ programme: member.programme, owner: member.id });
    }
    take({ isGuarded: true, member: null, ended: null });
    if (end.how === "stayed") tellStayed();
  };
  if (left === null)
    return (
      <button type="button" className="press quiet" onClick={() => void open()}>
        {say.signOut}
      </button>
    );
  const isSent = left !== "unreadable" && left.entries + left.files === 0;
  return (
    <section className="sign-out" aria-labelledby="h-sign-out">
      <h2 id="h-sign-out">{say.head}</h2>
      <p className="q2">{say.under}</p>
      {isSent ? null : (
        <p className="heed-line" role="status">
          {left === "unreadable" ? say.unreadable : say.notSent(left)} {isDemonstration ? null : <SaveJournal />}
        </p>
      )}
      <p className="acts">
        <button type="button" className="press" disabled={isBusy} onClick={() => void leave(false)}>
          {say.stay}
        </button>
        {isSent ? (
          <button type="button" className="press quiet" disabled={isBusy} onClick={() => void leave(true)}>
            {say.go}
          </button>
        ) : null}
        <button type="button" className="act" disabled={isBusy} onClick={() => setLeft(null)}>
          {say.cancel}
        </button>
      </p>
      <Says says={says} />
    </section>
  );
}
