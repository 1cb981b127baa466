/** A case for tests, told act by act: each act is made from the casebook as it was then, as the pages do it. */
import type { EntryDraft } from "../src/journal/index.ts";
import {
  askedFindings,
  findingDrafts,
  openCaseDrafts,
  readOpening,
  redFlagDraft,
  redFlagIds,
} from "../src/views/model/index.ts";
import { casebookOf } from "./casebook-of.ts";

/** The day of the case. */
export const today = "2026-03-02";

/** A case with five colonies, as the form writes it. */
export function opened(fields: Record<string, string> = {}) {
  const opening = readOpening({
    fields: {
      apiaryName: "Withen Bank",
      apiaryCode: "WB",
      district: "Tarrow Valley",
      latitude: "45",
      code: "TV-26-014",
      question: "Why do bees crawl?",
      waitsOn: "inspector 2",
      newColonies: "5",
      author: "specialist 1",
      ...fields,
    },
    apiary: null,
    takenApiaries: [],
    takenCases: [],
    today,
  });
  if (!opening.ok) throw new Error("the form does not open");
  let count = 0;
  const newId = () => `id-${++count}`;
  const { caseId, drafts } = openCaseDrafts({ opening: opening.value, casebook: casebookOf([]), today, newId });
  return { caseId, drafts, newId };
}

/** The case after further acts, each made from the casebook as it was then. */
export function following(
  start: ReturnType<typeof opened>,
  ...acts: readonly ((casebook: ReturnType<typeof casebookOf>) => readonly EntryDraft[])[]
) {
  let drafts = [...start.drafts];
  for (const act of acts) drafts = [...drafts, ...act(casebookOf(drafts))];
  const casebook = casebookOf(drafts);
  const state = casebook.cases[start.caseId];
  if (!state) throw new Error("the case is not there");
  return { casebook, state };
}

/** The first red flag: no; the others: not looked. */
export const answerFlags = (caseId: string) => (casebook: ReturnType<typeof casebookOf>) =>
  redFlagIds.map((flag, index) =>
    redFlagDraft(casebook.cases[caseId] as never, flag, index === 0 ? "absent" : "not-looked", today),
  );
/** One finding of a colony. */
export const see =
  (
    caseId: string,
    key: string,
    finding: "crawlers" | "k_wing" | "stores_ample" | "stores_exhausted",
    answer: "present" | "absent",
    on = today,
  ) =>
  (casebook: ReturnType<typeof casebookOf>) =>
    findingDrafts({
      state: casebook.cases[caseId] as never,
      key,
      finding,
      exclusiveWith: askedFindings.find((fact) => fact.id === finding)?.exclusiveWith ?? null,
      answer,
      on,
    });
/** Id of the colony registered as number 1, 2, 3 … */
export const colony = (casebook: ReturnType<typeof casebookOf>, number: number) =>
  Object.keys(Object.values(casebook.apiaries)[0]?.colonies ?? {})[number - 1] ?? "";
