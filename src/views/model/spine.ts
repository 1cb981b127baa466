/**
 * The spine of a case: the six questions on one scale, each with its state and day, and the label of the place.
 *
 * @module views/model
 */
import {
  type Casebook,
  type CaseState,
  coloniesOf,
  type Question,
  questionsOf,
  settled,
  specimensOf,
} from "../../casebook/index.ts";
import type { Day } from "../../units/index.ts";
import type { Words } from "../words/index.ts";
import { askedCount } from "./findings-grid.ts";
import { flagsNotAsked, flagsToAsk } from "./red-flag-answers.ts";

export interface SpineQuestion {
  readonly question: Question;
  readonly asks: string;
  readonly says: string;
  readonly status: "done" | "open" | "later";
  readonly day: Day | null;
  /** Short ticks under the question, at most 20. */
  readonly ticks: number;
}

export interface SpineView {
  readonly caseId: string;
  readonly code: string;
  readonly place: string;
  readonly under: string;
  readonly open: Question;
  readonly questions: readonly SpineQuestion[];
  /** Whom the case waits on and until when, as a sentence; and the parts for the form that hands it on. */
  readonly waits: { readonly says: string; readonly who: string; readonly due: Day };
  readonly label: {
    readonly apiary: string | null;
    readonly code: string;
    readonly mark: string;
    readonly district: string;
    readonly colonies: string;
    readonly openedOn: Day;
    readonly foot: string;
  };
}

const mostTicks = 20;

/** The spine of a case; null when the case is not on record. */
export function spineView(casebook: Casebook, caseId: string, words: Words): SpineView | null {
  const state = casebook.cases[caseId];
  const opened = state?.record?.candidates[0];
  if (!state || !opened) return null;
  const say = words.case;
  const apiary = state.apiary === null ? undefined : casebook.apiaries[state.apiary];
  const place = settled(apiary?.record);
  const colonies = coloniesOf(casebook, caseId).length;
  const questions = questionsOf(casebook, caseId, { redFlags: flagsToAsk(state) });
  return {
    caseId,
    code: opened.value.code,
    place: place?.name ?? say.noPlace,
    under: place ? say.under({ district: place.place, colonies }) : say.colonies({ count: colonies }),
    open: questions.find((each) => each.status === "open")?.question ?? 6,
    waits: waitsOf(state, words),
    questions: questions.map((each) => ({
      question: each.question,
      asks: say.questions[each.question],
      says: saysOf(casebook, state, each.question, words),
      status: each.status,
      day: each.lastDay,
      ticks: Math.min(mostTicks, each.entries),
    })),
    label: {
      apiary: apiary?.id ?? null,
      code: place?.code ?? "",
      mark: place?.elevationMetres === undefined ? "" : words.apiaries.metres({ metres: place.elevationMetres }),
      district: place?.place ?? say.noPlace,
      colonies: say.colonies({ count: colonies }),
      openedOn: opened.value.openedOn,
      foot: say.foot({ author: opened.author }),
    },
  };
}

function waitsOf(state: CaseState, words: Words): SpineView["waits"] {
  const opened = settled(state.record);
  const handed = settled(state.handedOn);
  const decided = settled(state.decision);
  const who = handed?.waitsOn ?? opened?.waitsOn ?? "";
  const due = handed?.due ?? decided?.reviewOn ?? opened?.due ?? "";
  return { says: words.case.waits({ who, due, note: handed?.note }), who, due };
}

/** Findings answered present or absent for any colony. */
export function answeredFindings(state: CaseState): number {
  const answered = new Set<string>();
  for (const own of Object.values(state.findings))
    for (const [finding, kept] of Object.entries(own))
      if (kept.candidates.some((each) => each.value !== "not-looked")) answered.add(finding);
  return answered.size;
}

function saysOf(casebook: Casebook, state: CaseState, question: Question, words: Words): string {
  const say = words.case;
  switch (question) {
    case 1:
      return seenSays(casebook, state, words);
    case 2: {
      const answered = answeredFindings(state);
      return answered === 0 ? say.nothingToRank : say.ranked({ answered });
    }
    case 3: {
      const steps = Object.values(state.steps).flatMap((step) => settled(step) ?? []);
      const count = (kind: "look" | "test") =>
        steps.filter((step) => step.kind === kind && step.state !== "dropped").length;
      const vials = specimensOf(casebook, state.id).length;
      const [looks, tests] = [count("look"), count("test")];
      return looks + tests + vials === 0 ? say.nothingPlanned : say.planned({ looks, tests, vials });
    }
    case 4: {
      const vials = specimensOf(casebook, state.id);
      const read = vials.filter((vial) => Object.values(vial.readings).some((reading) => settled(reading.finished)));
      const results = Object.keys(state.tests).length;
      return vials.length + results === 0
        ? say.noSpecimens
        : say.foundSays({ read: read.length, vials: vials.length, results });
    }
    case 5: {
      const decision = settled(state.decision);
      return decision
        ? say.decidedUntil({ choice: say.decided[decision.choice], day: decision.reviewOn })
        : say.notDecided;
    }
    case 6: {
      if (settled(state.closed)) return say.closed;
      const count = Object.keys(state.outcomes).length;
      return count === 0 ? say.noOutcome : say.outcomes({ count, colonies: coloniesOf(casebook, state.id).length });
    }
  }
}

function seenSays(casebook: Casebook, state: CaseState, words: Words): string {
  const left = flagsNotAsked(state);
  if (left > 0) return words.case.flagsOpen({ left });
  const answered = answeredFindings(state);
  return answered === 0
    ? words.case.nothingSeen
    : words.case.seen({ answered, notLooked: askedCount(casebook) - answered });
}
