/** Evidence that has learnt: the start as counts, a programme's own counts added, both kept side by side. */
import type { ExperienceUse } from "../../casebook/index.ts";
import { type Evidence, evidenceSeasons, type Seen, type ValueInUse } from "../../knowledge/index.ts";
import { ensure, type Season } from "../../units/index.ts";
import { countsSpread, type JudgedKind, startOf } from "../differential/index.ts";
import type { ExperienceCounts } from "./lessons.ts";

/**
 * The evidence with these counts added where `use` says so; the evidence given stays as it is.
 *
 * Model: each probability by itself is a beta share. The start has the counts that its width says, times `strength`;
 * the value in use is (start + seen) / (start looked + seen looked), and the sum gives the width of the draws. A value
 * of which nothing was seen stays as it is, unless `strength` says that the start is worth more or less. A prior of 0
 * stays 0: nothing can be learnt of what is held to be impossible.
 *
 * Not for cases that were chosen by what they show.
 *
 * @throws DomainError for a strength outside 0.1 to 10, or counts that do not fit each other
 * @source conjugate beta prior of a binomial share: Gelman et al. 2013, Bayesian data analysis, section 2.4 (from memory)
 */
export function withExperience(evidence: Evidence, counts: ExperienceCounts, use: ExperienceUse): Evidence {
  const { strength } = use;
  ensure(strength >= 0.1 && strength <= 10, "strength", strength, "from 0.1 to 10");
  const learn = <Value extends ValueInUse>(value: Value, seen: Seen | undefined, kind: JudgedKind): Value =>
    learnt(value, { seen: seen ?? null, kind, strength });
  const { frequencies, healthy, priors } = evidence;
  return {
    ...evidence,
    frequencies: use.frequencies
      ? mapped(frequencies, (pairs, id) =>
          mapped(pairs, (pair, finding) => learn(pair, counts.frequencies[id]?.[finding], "grade")),
        )
      : frequencies,
    healthy: use.healthyRates
      ? bySeason((season) => mapped(healthy[season], (rate, id) => learn(rate, counts.healthy[season][id], "grade")))
      : healthy,
    priors: use.priors
      ? mapped(priors, (seasons, id) =>
          bySeason((season) => learn(seasons[season], counts.priors[id]?.[season], "priorOdds")),
        )
      : priors,
  };
}

/** Whether experience changes anything. */
export const isUsed = ({ frequencies, healthyRates, priors }: ExperienceUse): boolean =>
  frequencies || healthyRates || priors;

interface Taught {
  readonly seen: Seen | null;
  readonly kind: JudgedKind;
  readonly strength: number;
}

function learnt<Value extends ValueInUse>(value: Value, { seen, kind, strength }: Taught): Value {
  const isUntouched = (seen === null || seen.looked === 0) && strength === 1;
  const centre = value.change?.value ?? value.published ?? value.value;
  if (isUntouched || !(centre > 0 && centre < 1)) return value;
  const { present, looked } = seen ?? { present: 0, looked: 0 };
  ensure(present >= 0 && present <= looked && Number.isFinite(looked), "seen", `${present} of ${looked}`, "counts");
  const unit = startOf(value, kind);
  const start = { present: unit.present * strength, looked: unit.looked * strength };
  const sum = { present: start.present + present, looked: start.looked + looked };
  return { ...value, value: sum.present / sum.looked, seen, start, spread: countsSpread(sum) };
}

function mapped<From, To>(
  record: Readonly<Record<string, From>>,
  change: (from: From, key: string) => To,
): Readonly<Record<string, To>> {
  return Object.fromEntries(Object.entries(record).map(([key, member]) => [key, change(member, key)]));
}

const bySeason = <T>(make: (season: Season) => T): Readonly<Record<Season, T>> =>
  Object.fromEntries(evidenceSeasons.map((season) => [season, make(season)])) as Record<Season, T>;
