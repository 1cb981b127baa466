/**
 * The kit card of a case, written for the laboratory that the vials go to.
 *
 * @module views/model
 */
import { type Casebook, coloniesOf, evidenceOf, settled, specimensOf } from "../../../casebook/index.ts";
import type { BodyOf } from "../../../journal/index.ts";
import {
  cautions,
  cautionsFor,
  type DestinationRule,
  destinationRules,
  isTestId,
  samplingFacts,
  tests,
} from "../../../knowledge/index.ts";
import { sampling } from "../../../reasoning/index.ts";
import type { PaperWords } from "../../words/index.ts";
import { colonyCode, labelOf, placeName, receiptOf } from "../bench/worklist.ts";
import { stopNotices } from "../done/stops.ts";
import type { KitCard } from "../paper.ts";

/** Keys of the laboratories whose rules were found; null is one's own bench. */
export type Destination = keyof typeof destinationRules;
export const destinations = Object.keys(destinationRules) as readonly Destination[];

type Plan = BodyOf<"sampling-planned">;

/** The sampling plan of a case that was written down last; null when there is none. */
export function samplePlanOf(casebook: Casebook, caseId: string): Plan | null {
  const kept = Object.values(casebook.cases[caseId]?.samplePlans ?? {});
  const newest = kept
    .map((each) => each.candidates.at(-1) ?? each.candidates[0])
    .sort((one, other) => one.value.on.localeCompare(other.value.on))
    .at(-1);
  return newest?.value ?? null;
}

/** The card; rows are the vials that have not come yet, or all when every one has. */
export function kitCard(
  casebook: Casebook,
  caseId: string,
  asked: { readonly destination: Destination | null; readonly words: PaperWords; readonly isDemonstration: boolean },
): KitCard {
  const { destination, words, isDemonstration } = asked;
  const say = words.paper;
  const all = specimensOf(casebook, caseId);
  const stops = stopsSay(casebook, caseId, words);
  const waiting = all.filter((specimen) => receiptOf(specimen) === null);
  const plan = samplePlanOf(casebook, caseId);
  const rule: DestinationRule | null = destination === null ? null : destinationRules[destination];
  const rows = (waiting.length > 0 ? waiting : all).flatMap((specimen) => {
    const label = labelOf(specimen);
    if (!label) return [];
    return [
      {
        code: label.code,
        colony: colonyCode(casebook, caseId, label.colony),
        from: say.from[label.from],
        bees: plan?.beesPerColony ?? samplingFacts["bees-per-colony"].figure.value,
      },
    ];
  });
  const kept = new Set(
    (waiting.length > 0 ? waiting : all).flatMap((specimen) => labelOf(specimen)?.preservative ?? []),
  );
  const bees = rows[0]?.bees ?? samplingFacts["bees-per-colony"].figure.value;
  const design = plan?.designPrevalence ?? 0.05;
  const sensitivity = plan?.sensitivity ?? 1;
  return {
    caseCode: settled(casebook.cases[caseId]?.record)?.code ?? "",
    place: placeName(casebook, caseId),
    laboratory: rule?.destination ?? plan?.laboratory ?? say.ownBench,
    question: settled(casebook.cases[caseId]?.record)?.question ?? "",
    rows,
    ...chosen(casebook, caseId, stops),
    // Beside a stop nobody is told how to take bees: the authority says what it asks for.
    steps: (stops.length > 0
      ? []
      : [
          say.kitSteps.queen,
          plan ? whereFact(plan.from) : "",
          say.kitSteps.take(bees, Math.ceil(bees / (1 - sampling.judgedSpareShare)) - bees),
          ...[...kept].map((preservative) => say.kitSteps.by[preservative]),
          ...(rule ? [say.kitSteps.laboratory(rule.keep), say.kitSteps.pack(rule.pack), say.kitSteps.ask] : []),
          say.kitSteps.slip,
          say.kitSteps.write,
        ]
    ).filter(Boolean),
    promise:
      stops.length > 0
        ? ""
        : say.kitPromise({
            bees,
            design,
            sensitivity,
            found: sampling.detectionProbability({ bees, designPrevalence: design, sensitivity }),
          }),
    stops,
    isInAlcohol: kept.has("ethanol-70"),
    cautions: [
      ...(kept.has("ethanol-70") ? cautionsFor("collection-in-alcohol") : []),
      ...(all.some((specimen) => labelOf(specimen)?.from === "D") ? cautionsFor("dead-bees-or-frass") : []),
      ...cautionsFor("field-visit"),
    ].map((id) => cautions[id].words),
    isDemonstration,
  };
}

/** The tests whose vials stand on the card. */
const ofTheVials: readonly string[] = ["tracheal-dissection", "thoracic-disc"];

/** What was chosen on question 3 and is not done; nothing beside a stop, where nothing is opened or taken. */
function chosen(
  casebook: Casebook,
  caseId: string,
  stops: readonly string[],
): Pick<KitCard, "colonies" | "looks" | "tests"> {
  const state = casebook.cases[caseId];
  if (!state || stops.length > 0) return { colonies: [], looks: [], tests: [] };
  const { evidence } = evidenceOf(casebook);
  const planned = Object.values(state.steps).flatMap((kept) => {
    const step = settled(kept);
    return step?.state === "planned" ? [step.step] : [];
  });
  return {
    colonies: coloniesOf(casebook, caseId)
      .filter((colony) => colony.state?.state !== "dead")
      .map(({ id, code }) => code ?? id),
    looks: planned.flatMap((id) => {
      const finding = Object.hasOwn(evidence.findings, id) ? evidence.findings[id] : undefined;
      return finding === undefined ? [] : [{ term: finding.term, how: finding.lookFor }];
    }),
    tests: planned.flatMap((id) =>
      isTestId(id) && !ofTheVials.includes(id) ? [{ term: tests[id].term, specimen: tests[id].specimen }] : [],
    ),
  };
}

/** What stops the apiary of a case, for a paper. */
export function stopsSay(casebook: Casebook, caseId: string, words: PaperWords): readonly string[] {
  const state = casebook.cases[caseId];
  if (!state) return [];
  return stopNotices(casebook, state, words).map(({ what, because, act, doNot }) =>
    words.paper.stop({ what, because, acts: [act, ...doNot, words.paper.stopSampling] }),
  );
}

/** Where the bees of a question come from, in the words of the handbook. */
function whereFact(from: Plan["from"]): string {
  if (from === "S") return samplingFacts["where-presence"].words;
  if (from === "E") return samplingFacts["where-estimate"].words;
  return from === "F" ? samplingFacts["where-entrance"].words : "";
}
