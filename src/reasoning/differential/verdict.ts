/** Whether a cause may be named: groups before single labels, and the bars that no probability lifts. */
import type { RollUp } from "../../knowledge/index.ts";
import type { Because, RankedCondition, RankedGroup, Verdict } from "./answer.ts";
import type { CaseModel } from "./case-model.ts";

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
  const isEmpty = !model.items.some(({ kind, isPositive }) => kind === "test" || (kind === "sign" && isPositive));
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
  { members }: Candidate,
): Because | null {
  const ids = members.map(({ id }) => id);
  const roles = new Set(members.map(({ role }) => role));
  if (mustBeReported && members.every(({ role }) => role === "normal")) return "report-first";
  if (ids.includes("tracheal_mites") && !tracheaeShowMites(model)) return "tracheae-not-opened";
  if (roles.has("syndrome") && !wasCounted(model)) return "needs-wash-and-spore-count";
  if ((roles.has("syndrome") || roles.has("secondary")) && primaryOpen(model, ranked)) return "primary-open";
  const support = new Set(members.flatMap((each) => each.for.map(({ finding }) => finding)));
  const telling = model.items.filter(
    ({ id, kind, isPositive }) => isPositive && kind !== "circumstance" && support.has(id),
  );
  if (telling.length === 0) return "circumstances-only";
  // How many colonies show it is no further look at the brood.
  const isSpread = (id: string) => model.evidence.findings[id]?.group === "spread";
  if (ids.includes("failing_queen") && telling.every(({ id }) => id === "spotty_brood" || isSpread(id)))
    return "spotty-brood-alone";
  return null;
}

const tracheaeShowMites = ({ levels }: CaseModel): boolean =>
  levels.some(({ condition, seen }) => condition === "tracheal_mites" && seen);

const wasCounted = ({ read, levels }: CaseModel): boolean =>
  levels.some(({ condition, tests }) => condition === "varroa_pms" && tests.length > 0) &&
  read.tests.some(({ test }) => test === "spore-count");

const primaryOpen = ({ read }: CaseModel, ranked: readonly RankedCondition[]): boolean =>
  ranked.some(({ role, posterior }) => role === "cause" && posterior >= read.thresholds.open);
