/** Several counts of one colony: its load at a level is drawn once, not anew for each sample. */

/** Samples that are equally weak, as one count. */
export interface PooledCount {
  /** Positive bees, or mites. */
  readonly count: number;
  /** Bees examined, or hundreds of bees washed. */
  readonly size: number;
  /** With this chance the sample shows what a colony without the agent shows, whatever the level. */
  readonly chance: number;
}

/** How loads of colonies at one level spread, and what a count tells of the load of this colony. */
export interface LoadModel<Load> {
  /** The spread before anything was counted. */
  readonly start: Load;
  /** Probability of the count. */
  readonly chance: (pool: PooledCount, load: Load) => number;
  /** The spread once the count is known. */
  readonly after: (pool: PooledCount, load: Load) => Load;
  /** Probability of the count in a colony without the agent. */
  readonly none: (pool: PooledCount) => number;
}

/**
 * Probability of all these counts at one level.
 *
 * Model: the colony's load is drawn once from the spread of its level; each pool shows it, or with its chance shows
 * nothing of it. Exact over both for every pool, so the cost doubles with each. Taken as independent looks, two
 * samples would weigh the spread between colonies twice: three washes of one colony would be three colonies.
 *
 * Not for samples between which the load has changed.
 *
 * @example
 * jointCount([], { start: 0, chance: () => 1, after: (_, load) => load, none: () => 1 })  // → 1
 */
export function jointCount<Load>(
  [first, ...rest]: readonly PooledCount[],
  model: LoadModel<Load>,
  load = model.start,
): number {
  if (first === undefined) return 1;
  const shown =
    first.chance < 1
      ? (1 - first.chance) * model.chance(first, load) * jointCount(rest, model, model.after(first, load))
      : 0;
  return first.chance > 0 ? shown + first.chance * model.none(first) * jointCount(rest, model, load) : shown;
}
