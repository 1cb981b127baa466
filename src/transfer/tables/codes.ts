/** Codes a person knows a thing by; the id where there is no code yet. */
import { type Casebook, type Kept, stateOf } from "../../casebook/index.ts";

/** The codes about one case. */
export interface Codes {
  readonly kase: string;
  readonly apiary: string;
  readonly colony: (id: string | null) => string | null;
}

/** The first of what stands in a slot; null where nothing does. */
export const first = <T>(kept: Kept<T> | null | undefined): T | null => kept?.candidates[0]?.value ?? null;

/** The codes of a case, its apiary and its colonies. */
export function codesOf(casebook: Casebook, caseId: string): Codes {
  const kase = stateOf(casebook.cases, caseId);
  const apiary = stateOf(casebook.apiaries, kase?.apiary ?? null);
  return {
    kase: first(kase?.record)?.code ?? caseId,
    apiary: first(apiary?.record)?.code ?? kase?.apiary ?? "",
    colony: (id) => (id === null ? null : (first(stateOf(apiary?.colonies ?? {}, id)?.record)?.code ?? id)),
  };
}

/** Ids of the cases, in order. */
export const caseIds = (casebook: Casebook): readonly string[] => Object.keys(casebook.cases).sort();
