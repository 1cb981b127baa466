/** Whether a cause may be named: groups before single labels, and the bars that no probability lifts. */
import type { RollUp } from "../../knowledge/index.ts";
import type { Because, RankedCondition, RankedGroup, Verdict } from "./answer.ts";
import type { CaseModel, EvidenceItem } from "./case-model.ts";
import { tellingSign } from "./judgements.ts";

/** What may lead: a roll-up group, or a condition that belongs to none. */
interface Candidate {
  readonly group: RollUp | null;
  readonly members: readonly RankedCondition[];
  readonly posterior: number;
  readonly low: number;
}

/** What the verdict is given on: the case, and whether a notice asks to report something. */
interface Judged {
  readonly model: CaseModel;
  readonly mustBeReported: boolean;
}

/**
 * The verdict. A candidate leads when the lower end of its range exceeds the threshold and nothing bars it; within a
 * leading group a single label is named only if it passes by itself.
 */
export function verdictOf(judged: Judged, ranked: readonly RankedCondition[], groups: readonly RankedGroup[]): Verdict {
  const { model } = judged;
  const { leading } = model.read.thresholds;
  const isEmpty = !model.items.some((item) => item.kind === "test" || (item.isPositive && isLook(model, item)));
  if (isEmpty) return { kind: "cannot-tell", because: "no-sign-or-test" };
  const candidates = candidatesOf(model, ranked, groups);
  let barredBy: Because | null = null;
  for (const candidate of candidates.filter(({ low }) => low > leading)) {
    const barred = barOf(judged, ranked, candidate);
    if (barred === null) return named(judged, ranked, candidate);
    barredBy ??= barred;
  }
  if (barredBy !== null) return { kind: "cannot-tell", because: barredBy };
  const likely = candidates.find(({ posterior }) => posterior > leading);
  if (likely === undefined) return { kind: "cannot-tell", because: "nothing-likely" };
  return { kind: "cannot-tell", because: barOf(judged, ranked, likely) ?? "range-too-wide" };
}

function candidatesOf(
  { evidence: { conditions } }: CaseModel,
  ranked: readonly RankedCondition[],
  groups: readonly RankedGroup[],
): readonly Candidate[] {
  const inGroups = groups.map(({ id, posterior, low }) => ({
    group: id,
    members: ranked.filter((each) => conditions[each.id]?.rollUp === id),
    posterior,
    low,
  }));
  const alone = ranked
    .filter(({ id }) => conditions[id]?.rollUp === null)
    .map((each) => ({ group: null, members: [each], posterior: each.posterior, low: each.low }));
  return [...inGroups, ...alone].sort((a, b) => b.posterior - a.posterior);
}

function named(judged: Judged, ranked: readonly RankedCondition[], { group, members }: Candidate): Verdict {
  const single = members.find(
    (each) =>
      each.low > judged.model.read.thresholds.leading &&
      barOf(judged, ranked, { group: null, members: [each], posterior: each.posterior, low: each.low }) === null,
  );
  const rollUp = group === null ? {} : { group };
  if (single === undefined) return { kind: "leading", ...rollUp, because: "group-leads" };
  return { kind: "leading", condition: single.id, ...rollUp, because: "leads" };
}

/** What bars a candidate from leading, however likely; null when nothing does. */
function barOf(
  { model, mustBeReported }: Judged,
  ranked: readonly RankedCondition[],
  candidate: Candidate,
): Because | null {
  const { members } = candidate;
  const ids = members.map(({ id }) => id);
  const roles = new Set(members.map(({ role }) => role));
  if (mustBeReported && members.every(({ role }) => role === "normal")) return "report-first";
  if (ids.includes("tracheal_mites") && !tracheaeShowMites(model)) return "tracheae-not-opened";
  if (roles.has("syndrome") && !wasCounted(model)) return "needs-wash-and-spore-count";
  if ((roles.has("syndrome") || roles.has("secondary")) && primaryOpen(model, ranked)) return "primary-open";
  const support = new Set(members.flatMap((each) => each.for.map(({ finding }) => finding)));
  const telling = model.items.filter(
    (item) => item.isPositive && support.has(item.id) && (item.kind === "test" || isLook(model, item)),
  );
  if (telling.length === 0) return "circumstances-only";
  if (ids.includes("failing_queen") && telling.every(({ id }) => id === "spotty_brood")) return "spotty-brood-alone";
  const [only, ...more] = telling;
  if (only?.kind === "sign" && more.length === 0 && !isTelling(model, candidate, only.id)) return "one-common-sign";
  if (queenOrBreak(model, members)) return "needs-test-frame";
  return null;
}

/** Whether an item is a look at the colony: how many others show it, and how soon it came, is none. */
const isLook = ({ evidence }: CaseModel, { kind, id }: EvidenceItem): boolean =>
  kind === "sign" && !["spread", "onset"].includes(evidence.findings[id]?.group ?? "");

/** Whether a sign is of these causes and hardly of any other that could be there; a group is judged against others alone. */
function isTelling({ evidence, network }: CaseModel, { group, members }: Candidate, sign: string): boolean {
  const { least, shareElsewhere, possible } = tellingSign;
  const ids: readonly string[] = members.map(({ id }) => id);
  const rateOf = (id: string) => evidence.frequencies[id]?.[sign]?.value ?? 0;
  const own = Math.max(...ids.map(rateOf));
  const others = network.conditions.filter(
    ({ id, odds, rollUp }) => !ids.includes(id) && !(group !== null && rollUp === group) && odds >= possible,
  );
  return own >= least && others.every(({ id }) => rateOf(id) <= own * shareElsewhere);
}

/** A living colony without a queen and one between two queens look alike to everything but a test frame. */
const alike: readonly string[] = ["queenless", "brood_break_swarm"];

function queenOrBreak({ read }: CaseModel, members: readonly RankedCondition[]): boolean {
  if (read.colonyState === "dead" || read.tests.some(({ test }) => test === "test-frame")) return false;
  const others = members.filter(({ id }) => !alike.includes(id)).reduce((sum, { posterior }) => sum + posterior, 0);
  return members.some(({ id }) => alike.includes(id)) && others <= read.thresholds.leading;
}

const tracheaeShowMites = ({ levels }: CaseModel): boolean =>
  levels.some(({ condition, seen }) => condition === "tracheal_mites" && seen);

const wasCounted = ({ read, levels }: CaseModel): boolean =>
  levels.some(({ condition, tests }) => condition === "varroa_pms" && tests.length > 0) &&
  read.tests.some(({ test }) => test === "spore-count");

const primaryOpen = ({ read }: CaseModel, ranked: readonly RankedCondition[]): boolean =>
  ranked.some(({ role, posterior }) => role === "cause" && posterior >= read.thresholds.open);
