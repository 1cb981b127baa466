/** Leaves out of an import what the casebook already holds, and shows where it holds something else. */
import { type Casebook, type Kept, stateOf } from "../casebook/index.ts";
import { type BodyOf, canonicalJson, type EntryDraft, type EntryId } from "../journal/index.ts";

export interface FreshDrafts {
  /** To be recorded. */
  readonly fresh: readonly EntryDraft[];
  /** How many stand already, word for word. */
  readonly standing: number;
  /** What the casebook holds differently: shown to a person, never overwritten. `replaces` is what they would correct. */
  readonly differing: readonly { readonly draft: EntryDraft; readonly replaces: readonly EntryId[] }[];
}

/**
 * The drafts that add something to the casebook. The same file imported twice adds nothing the second time.
 *
 * A result of the same test, colony and day with other counts is taken as a correction for a person to settle.
 * A value that somebody withdrew after an import comes back as fresh.
 */
export function freshDrafts(casebook: Casebook, drafts: readonly EntryDraft[]): FreshDrafts {
  const fresh: EntryDraft[] = [];
  const differing: { draft: EntryDraft; replaces: readonly EntryId[] }[] = [];
  const results = resultsByPlace(casebook);
  let standing = 0;
  for (const draft of drafts) {
    const held =
      draft.kind === "test-result-recorded"
        ? results(draft.about[0] ?? "", draft.data)
        : heldInPlaceOf(casebook, draft);
    const wanted = canonicalJson(draft.data);
    if (held.length === 0) fresh.push(draft);
    else if (held.some(({ value }) => canonicalJson(value) === wanted)) standing++;
    else differing.push({ draft, replaces: held.map(({ entry }) => entry) });
  }
  return { fresh, standing, differing };
}

/** What was on no record before, by the code or name that the table has for it. */
export interface NewNames {
  readonly apiaries: readonly string[];
  readonly colonies: readonly string[];
}

/** Apiaries and colonies that drafts register: a name that is spelt otherwise than on record shows itself here. */
export function newNames(drafts: readonly EntryDraft[]): NewNames {
  return {
    apiaries: drafts.flatMap((draft) => (draft.kind === "apiary-registered" ? [draft.data.name] : [])),
    colonies: drafts.flatMap((draft) => (draft.kind === "colony-registered" ? [draft.data.code] : [])),
  };
}

interface Held {
  readonly entry: EntryId;
  readonly value: unknown;
}

const kept = (slot: Kept<unknown> | null | undefined): readonly Held[] => slot?.candidates ?? [];

type Result = BodyOf<"test-result-recorded">;

/** Results of a case by colony, test and day, sorted once a case: a table may hold a hundred thousand of them. */
function resultsByPlace(casebook: Casebook) {
  const keyOf = ({ colony, test, on }: Result) => JSON.stringify([colony, test, on]);
  const sorted = new Map<string, ReadonlyMap<string, readonly Held[]>>();
  return (caseId: string, result: Result): readonly Held[] => {
    const known = sorted.get(caseId);
    const byPlace =
      known ?? Map.groupBy(Object.values(stateOf(casebook.cases, caseId)?.tests ?? {}), ({ value }) => keyOf(value));
    if (!known) sorted.set(caseId, byPlace);
    return byPlace.get(keyOf(result)) ?? [];
  };
}

/** What stands where the draft would stand. */
function heldInPlaceOf(casebook: Casebook, draft: EntryDraft): readonly Held[] {
  const [root = "", second = ""] = draft.about;
  const apiary = stateOf(casebook.apiaries, root);
  const kase = stateOf(casebook.cases, root);
  switch (draft.kind) {
    case "apiary-registered":
      return kept(apiary?.record);
    case "colony-registered":
      return kept(stateOf(apiary?.colonies ?? {}, second)?.record);
    case "weather-year-recorded":
      return kept(apiary?.weather);
    case "case-opened":
      return kept(kase?.record);
    case "finding-recorded":
      // The casebook keeps the state of a finding, not its day: the state is what is compared.
      return kept(kase?.findings[draft.data.colony ?? ""]?.[draft.data.finding]).map((each) => ({
        entry: each.entry,
        value: { ...draft.data, state: each.value },
      }));
    default:
      return [];
  }
}
