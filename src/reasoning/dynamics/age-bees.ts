/** The hot loop: bees of all ages survive, are infested, carry their mites on and grow a day older, in place. */

/**
 * Moves bees on by one day: each cell takes the bees that left the one before; those that leave the oldest age stay in
 * it, and the cell of the youngest is left empty. Expected numbers of bees, not whole bees. A bee infested today does
 * not move on in its latent stages today.
 *
 * Single numbers, not an object, since this is called twice a colony-day. Cells are read and written at one place each,
 * and `| 0` keeps their numbers whole for the compiler: that took about a sixth off this loop.
 *
 * @param cell place of the cell of `fromAge`, class 0
 * @param change age from which the second pair of survivals holds
 * @param toAge not included
 * @param survivals shares that live through the day: of all, of patent bees; the same from `change` on
 * @param pair place of the first pair in `survivals`
 * @param sums takes what was counted, added to: clean bees; the first latent stage; stages 2, 4, 6; stages 3, 5, 7;
 * patent; cleared. In this fixed order, so that every kernel gives the same bits.
 */
export function ageBees(
  state: Float64Array,
  infestation: Float64Array,
  advance: number,
  cell: number,
  fromAge: number,
  change: number,
  toAge: number,
  survivals: Float64Array,
  pair: number,
  sums: Float64Array,
): void {
  let clean = sums[0] as number;
  let newest = sums[1] as number;
  let even = sums[2] as number;
  let odd = sums[3] as number;
  let patent = sums[4] as number;
  let cleared = sums[5] as number;
  let m0 = 0;
  let m1 = 0;
  let m2 = 0;
  let m3 = 0;
  let m4 = 0;
  let m5 = 0;
  let m6 = 0;
  let m7 = 0;
  let m8 = 0;
  let m9 = 0;
  let i = cell | 0;
  let age = fromAge | 0;
  for (let part = 0; part < 2; part++) {
    const survival = survivals[pair + 2 * part] as number;
    const survivalPatent = survivals[pair + 2 * part + 1] as number;
    const goes = survival * advance;
    const stays = survival - goes;
    const end = part === 0 ? change : toAge;
    for (; age < end; age = (age + 1) | 0) {
      const alive = (state[i] as number) * survival;
      const caught = alive * (infestation[age] as number);
      state[i] = m0;
      m0 = alive - caught;
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
      clean += m0;
      newest += m1;
      even += m2 + m4 + m6;
      odd += m3 + m5 + m7;
      patent += m8;
      cleared += m9;
      i = (i + 10) | 0;
    }
  }
  i = (i - 10) | 0;
  state[i] = (state[i] as number) + m0;
  state[(i + 1) | 0] = (state[(i + 1) | 0] as number) + m1;
  state[(i + 2) | 0] = (state[(i + 2) | 0] as number) + m2;
  state[(i + 3) | 0] = (state[(i + 3) | 0] as number) + m3;
  state[(i + 4) | 0] = (state[(i + 4) | 0] as number) + m4;
  state[(i + 5) | 0] = (state[(i + 5) | 0] as number) + m5;
  state[(i + 6) | 0] = (state[(i + 6) | 0] as number) + m6;
  state[(i + 7) | 0] = (state[(i + 7) | 0] as number) + m7;
  state[(i + 8) | 0] = (state[(i + 8) | 0] as number) + m8;
  state[(i + 9) | 0] = (state[(i + 9) | 0] as number) + m9;
  sums[0] = clean;
  sums[1] = newest;
  sums[2] = even;
  sums[3] = odd;
  sums[4] = patent;
  sums[5] = cleared;
}
