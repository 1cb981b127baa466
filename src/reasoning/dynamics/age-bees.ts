/** The hot loop: bees of a stretch of ages survive, are infested, carry their mites on and grow a day older, in place. */

/** Bees on their way from one age to the next (one number a class), and what was counted on the way. */
export interface Passage {
  readonly moving: Float64Array;
  infested: number;
  patent: number;
  others: number;
}

/** A stretch of ages under the same survival. */
export interface Stretch {
  /** Place of the first age's cell of class 0. */
  readonly cell: number;
  readonly fromAge: number;
  /** Not included. */
  readonly toAge: number;
  readonly survival: number;
  readonly survivalPatent: number;
}

/**
 * Moves the ages of a stretch on by one day: each cell takes the bees that wait in `passage.moving` and leaves its own
 * there, one day older. Expected numbers of bees, not whole bees.
 *
 * A bee infested today does not move on in its latent stages today. Cells are read and written at one place each, and
 * `| 0` keeps their numbers whole for the compiler: that took about a sixth off this loop.
 */
export function ageBees(
  state: Float64Array,
  infestation: Float64Array,
  advance: number,
  { cell, fromAge, toAge, survival, survivalPatent }: Stretch,
  passage: Passage,
): void {
  const { moving } = passage;
  const goes = survival * advance;
  const stays = survival - goes;
  let infested = 0;
  let patents = 0;
  let others = 0;
  let m0 = moving[0] as number;
  let m1 = moving[1] as number;
  let m2 = moving[2] as number;
  let m3 = moving[3] as number;
  let m4 = moving[4] as number;
  let m5 = moving[5] as number;
  let m6 = moving[6] as number;
  let m7 = moving[7] as number;
  let m8 = moving[8] as number;
  let m9 = moving[9] as number;
  let i = cell | 0;
  for (let age = fromAge; age < toAge; age = (age + 1) | 0) {
    const clean = (state[i] as number) * survival;
    const caught = clean * (infestation[age] as number);
    state[i] = m0;
    m0 = clean - caught;
    const l1 = state[(i + 1) | 0] as number;
    state[(i + 1) | 0] = m1;
    m1 = l1 * stays + caught;
    const l2 = state[(i + 2) | 0] as number;
    state[(i + 2) | 0] = m2;
    m2 = l2 * stays + l1 * goes;
    const l3 = state[(i + 3) | 0] as number;
    state[(i + 3) | 0] = m3;
    m3 = l3 * stays + l2 * goes;
    const l4 = state[(i + 4) | 0] as number;
    state[(i + 4) | 0] = m4;
    m4 = l4 * stays + l3 * goes;
    const l5 = state[(i + 5) | 0] as number;
    state[(i + 5) | 0] = m5;
    m5 = l5 * stays + l4 * goes;
    const l6 = state[(i + 6) | 0] as number;
    state[(i + 6) | 0] = m6;
    m6 = l6 * stays + l5 * goes;
    const l7 = state[(i + 7) | 0] as number;
    state[(i + 7) | 0] = m7;
    m7 = l7 * stays + l6 * goes;
    const givers = state[(i + 8) | 0] as number;
    state[(i + 8) | 0] = m8;
    m8 = givers * survivalPatent + l7 * goes;
    const dead = state[(i + 9) | 0] as number;
    state[(i + 9) | 0] = m9;
    m9 = dead * survival;
    infested += m1 + m2 + (m3 + m4) + (m5 + m6 + (m7 + m8));
    patents += m8;
    others += m0 + m9;
    i = (i + 10) | 0;
  }
  moving[0] = m0;
  moving[1] = m1;
  moving[2] = m2;
  moving[3] = m3;
  moving[4] = m4;
  moving[5] = m5;
  moving[6] = m6;
  moving[7] = m7;
  moving[8] = m8;
  moving[9] = m9;
  passage.infested += infested;
  passage.patent += patents;
  passage.others += others;
}
