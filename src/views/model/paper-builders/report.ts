/**
 * The report of a case as its records stand: the answer, what was looked at, what could have been missed, what to do.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, coloniesOf, plansOf, settled } from "../../../casebook/index.ts";
import type { Head } from "../../../journal/index.ts";
import {
  type CautionId,
  type ControlId,
  cautions,
  cautionsFor,
  controls,
  knowledgeVersion,
} from "../../../knowledge/index.ts";
import type { differential } from "../../../reasoning/index.ts";
import type { Day } from "../../../units/index.ts";
import type { PaperWords } from "../../words/index.ts";
import { stopActs, stopsLifted } from "../done/stop-acts.ts";
import { stopName, stopNotices } from "../done/stops.ts";
import { urgentActs } from "../done/urgent.ts";
import { reportsTold } from "../forms/reports-told.ts";
import { foundView, toldInAnswer } from "../found/found-view.ts";
import { apiaryOf, otherTests } from "../found/other-tests.ts";
import type { SpecimenFound } from "../found/specimens.ts";
import type { OwnReckoning } from "../own-evidence.ts";
import type { Report, ReportRow } from "../paper.ts";
import { stopsSay } from "./kit.ts";
import { reportCauses, reportDone, reportEffect, reportSigns } from "./report-case.ts";
import { reportMissed } from "./report-missed.ts";
import type { ToRank } from "./report-rank.ts";

interface Asked {
  readonly today: Day;
  readonly words: PaperWords;
  readonly isDemonstration: boolean;
  /** The newest entry of each device whose records these are. */
  readonly heads: readonly Head[];
  /** How the questions of `ranked` were put. */
  readonly own: OwnReckoning;
  /** The colonies of `reportToRank`, and what was answered for each, in its order. */
  readonly toRank: readonly ToRank[];
  readonly ranked: readonly (differential.AnyAnswer | null)[];
}

/** The report of a case; null when the case is not on record. */
export function caseReport(casebook: Casebook, caseId: string, asked: Asked): Report | null {
  const state = casebook.cases[caseId];
  const opened = state?.record?.candidates[0].value;
  if (!state || !opened) return null;
  const { today, words, isDemonstration, heads, own, toRank, ranked } = asked;
  const say = words.paper;
  const view = foundView(casebook, caseId, words);
  const read = view.specimens.filter((each) => each.estimate !== null);
  const sampled = new Set(read.map((each) => each.label.colony));
  const colonies = coloniesOf(casebook, caseId);
  const told = otherTests(casebook, state, words);
  const apiary = apiaryOf(casebook, state);
  const [heavy = "", rest = ""] = splitAnswer(view.answer);
  const shown = view.specimens.find((each) => each.id === view.first && !each.isLimited);
  const estimate = shown?.estimate ?? null;
  return {
    code: opened.code,
    caseCode: opened.code,
    place: apiary?.name ?? words.case.noPlace,
    area: apiary?.place ?? "",
    colonies: words.case.colonies({ count: colonies.length }),
    sampledOn: [...new Set(read.flatMap((each) => each.takenOn ?? []))].sort().at(-1) ?? null,
    printedOn: today,
    asked: opened.question,
    answer: view.specimens.length + told.length === 0 ? say.nothingFound : { heavy, rest },
    below: [
      ...(read.length > 0 ? [say.unsampled(colonies.filter((colony) => !sampled.has(colony.id)).length)] : []),
      ...told.slice(read.length > 0 ? 0 : toldInAnswer).map(words.found.toldResult),
    ],
    picture:
      shown && estimate
        ? {
            colony: shown.colony,
            value: 100 * estimate.value,
            low: 100 * estimate.low,
            high: 100 * estimate.high,
          }
        : null,
    rows: [...view.specimens]
      .filter((each) => each.received !== null)
      .sort((one, other) => (other.takenOn ?? "").localeCompare(one.takenOn ?? ""))
      .map((each) => reportRow(each, words)),
    lines: [...new Set(view.bands.flatMap((band) => [band.from, ...(band.to === null ? [] : [band.to])]))]
      .filter((line) => line > 0)
      .sort((one, other) => one - other),
    stops: stopsSay(casebook, caseId, words),
    signs: reportSigns(casebook, state, words),
    causes: reportCauses(toRank, ranked, {
      evidence: own.evidence,
      isStopped: stopActs(casebook, state).length > 0,
      words,
    }),
    done: reportDone(casebook, state, { today, words }),
    effect: reportEffect(casebook, state, words),
    howRead: howRead(view.specimens, words),
    missed: reportMissed(casebook, state, { read, words }),
    toDo: toDo(casebook, state, { today, words }),
    heed: heed(casebook, state, view.specimens).map((id) => cautions[id].words),
    rules: [say.rulesOf(view.bandsSay, knowledgeVersion), words.could.ownUsed(own.says)].filter(Boolean).join(" "),
    heads: [...heads]
      .sort((one, other) => one.device.localeCompare(other.device))
      .map(({ device, seq, hash }) => say.head({ device: brief(device), entry: seq, seal: brief(hash) })),
    isDemonstration,
  };
}

/** Enough of a long id to tell it from others. */
const brief = (id: string): string => (id.length > 16 ? id.slice(0, 8) : id);

/** The weighted part of an answer, and the rest of it. */
function splitAnswer(answer: string): readonly string[] {
  const parts = answer.split("**");
  return [parts[1] ?? answer, parts.slice(2).join("").trim()];
}

function reportRow(specimen: SpecimenFound, words: PaperWords): ReportRow {
  const tally = specimen.readings[0]?.tally;
  const { received, estimate, label } = specimen;
  return {
    code: label.code,
    colony: specimen.colony,
    from: label.from,
    condition: received ? words.paper.condition[received.condition as 0 | 1 | 2 | 3] : "",
    read: `${tally?.read ?? 0} / ${received?.beesReceived ?? 0}`,
    withMites:
      tally && tally.read > 0 ? words.found.of({ positive: tally.positive, read: tally.read }) : words.found.notRead,
    estimate: estimate ? { value: 100 * estimate.value, low: 100 * estimate.low, high: 100 * estimate.high } : null,
    isLimited: specimen.isLimited,
  };
}

function howRead(specimens: readonly SpecimenFound[], words: PaperWords): string {
  const each = <T>(list: readonly T[]): T[] => [...new Set(list)];
  const read = specimens.filter((specimen) => specimen.readings.length > 0);
  const limited = read.filter((specimen) => specimen.isLimited).map((specimen) => words.paper.limited(specimen.colony));
  return [
    words.paper.howRead({
      letters: each(read.map((specimen) => words.paper.from[specimen.label.from])),
      kept: each(read.map((specimen) => words.bench.keptIn[specimen.label.preservative])),
      received: each(read.flatMap((specimen) => specimen.received?.on ?? [])).sort(),
      read: each(read.flatMap((specimen) => specimen.readings.map((reading) => reading.finished.on))).sort(),
      readers: each(read.flatMap((specimen) => specimen.readings.map((reading) => reading.started.reader))),
    }),
    ...limited,
  ].join(" ");
}

/** What stops, what cannot wait, then the decision and its plan. */
function toDo(casebook: Casebook, state: CaseState, { today, words }: Pick<Asked, "today" | "words">): Report["toDo"] {
  const stops = stopNotices(casebook, state, words);
  const on = (day: Day) => words.case.day({ day });
  const reported = reportsTold(casebook, state, words);
  const past = [
    ...reported.reports.map((what) => ({ on: "", what })),
    ...stopsLifted(casebook, state).map(({ lifted, ...stop }) => ({
      on: on(lifted.on),
      what: words.paper.lifted({ ...lifted, what: stopName(stop) }),
    })),
  ];
  const urgent = urgentActs(casebook, state).map((each) => ({ on: on(today), what: words.done.urgentIn(each) }));
  if (stops.length > 0) {
    return [
      ...stops.map((stop) => ({
        on: on(today),
        what: words.paper.stop({
          what: stop.what,
          because: stop.because,
          acts: [
            ...(stop.elsewhere ? [`${words.case.stop.elsewhere({ code: stop.elsewhere.code })}.`] : []),
            ...[stop.act, ...stop.doNot],
          ],
        }),
      })),
      ...past,
      ...(reported.missing === null ? [] : [{ on: "", what: reported.missing }]),
      ...urgent,
    ];
  }
  const decided = settled(state.decision);
  if (!decided) return [...past, ...urgent, { on: on(today), what: words.paper.nothingToDo }];
  const steps = plansOf(casebook, state.id).flatMap((plan) => {
    const body = settled(plan.record);
    return (body?.steps ?? [])
      .filter((step) => !settled(plan.done[step.step]))
      .map((step) => ({
        day: step.on,
        what: `${words.done.stepShort[step.kind]}, ${controls[body?.control as ControlId]?.term ?? body?.control ?? ""}: ${step.note}`,
      }));
  });
  const rows = [
    { day: decided.on, what: words.paper.decided(words.done.choices[decided.choice], decided.reason) },
    ...steps,
    { day: decided.reviewOn, what: words.paper.lookAgain },
  ];
  return [
    ...past,
    ...urgent,
    ...rows.sort((one, other) => one.day.localeCompare(other.day)).map((row) => ({ on: on(row.day), what: row.what })),
  ];
}

function heed(casebook: Casebook, state: CaseState, specimens: readonly SpecimenFound[]): readonly CautionId[] {
  const planned = plansOf(casebook, state.id).flatMap((plan) => settled(plan.record)?.control ?? []);
  const decided = settled(state.decision)?.control;
  const used = [...planned, ...(decided ? [decided] : [])].flatMap((id) => controls[id as ControlId]?.cautions ?? []);
  const spirit = specimens.some((each) => each.label.preservative === "ethanol-70");
  return [
    ...new Set<CautionId>([
      ...(stopActs(casebook, state).length > 0 ? cautionsFor("notifiable-suspicion") : []),
      ...(used.length > 0 ? used : cautionsFor("any-chemical")),
      ...(spirit ? cautionsFor("collection-in-alcohol") : []),
      ...cautionsFor("dead-bees-or-frass"),
    ]),
  ];
}
