/** How this casebook's questions are put: the programme's evidence and settings, and what its closed cases taught. */
import { useEffect, useMemo, useRef } from "react";
import { type Casebook, evidenceOf } from "../../../casebook/index.ts";
import type { Evidence } from "../../../knowledge/index.ts";
import { type OwnReckoning, ownReckoning } from "../../model/index.ts";
import { useCasebook } from "../store/context.ts";
import { useProgramme } from "./use-programme.ts";

/** What has names and can be asked: the published evidence with the programme's changes. */
export function useEvidence(): Evidence {
  const { casebook } = useCasebook();
  const from = useAlike(Object.values(casebook.programmes));
  // biome-ignore lint/correctness/useExhaustiveDependencies: the evidence rests on the programme's own states alone
  return useMemo(() => evidenceOf(casebook).evidence, [from]);
}

/** The same with settings and experience; closed cases are counted away from the page, and it `waits` until they are. */
export function useOwn(): OwnReckoning {
  const { casebook } = useCasebook();
  const { answer, ask, forget } = useProgramme<"taught">();
  const from = useAlike(restsOn(casebook));
  const taught = answer?.taught ?? null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is asked rests on `from` alone
  const own = useMemo(() => ownReckoning(casebook, taught), [from, taught]);
  const learns = own.says.cases !== null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: counted anew when what it rests on changes
  useEffect(() => {
    if (learns) ask({ kind: "taught", casebook });
    else forget();
  }, [from, learns, ask, forget]);
  return own;
}

/** What it is made from: the programme's own states, the closed cases, and their specimens. */
function restsOn({ programmes, cases, specimens }: Casebook): readonly object[] {
  const closed = Object.values(cases).filter((state) => state.closed !== null);
  const ids = new Set(closed.map(({ id }) => id));
  return [
    ...Object.values(programmes),
    ...closed,
    ...Object.values(specimens).filter((specimen) => specimen.case !== null && ids.has(specimen.case)),
  ];
}

/** The same list as long as its members are the same. */
function useAlike(list: readonly object[]): readonly object[] {
  const kept = useRef(list);
  if (list.length !== kept.current.length || list.some((each, at) => each !== kept.current[at])) kept.current = list;
  return kept.current;
}
