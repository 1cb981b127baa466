/** The day of a colony as a WebAssembly program, two numbers at a time: step for step what `oneDay` does, to the same bits. */
import { doublings, greatestHazard } from "../chance-of-hazard.ts";
import { broodDays } from "../layout.ts";
import { ageAll } from "./age-program.ts";
import { all, type Code, call, choose, f64, i32, type Local, pair, when, whileTrue, written } from "./encoder.ts";
import { constant, head, type MakeLocal, nowhere, on, place, setHead, type Today } from "./memory-code.ts";
import { ageBytes, broodByte, dayFields, type Place, seenWidth } from "./memory-map.ts";

/**
 * `run(from, to, particle, noisy)` takes the colony in memory from day `from` to day `to` of the table and writes what
 * is seen each next morning.
 *
 * @param exp index of the function e^x
 * @param drift index of the function that moves the noise of a particle on by a day
 */
export const runDays = (exp: number, drift: number) =>
  written({ takes: ["i32", "i32", "i32", "i32"], gives: [] }, ([from, to, particle, noisy], local) => {
    if (!from || !to || !particle || !noisy) return [];
    const row = local("i32");
    const seen = local("i32");
    const rowBytes = dayFields.length * 8;
    const today: Today = (field) => f64.load(row.get, dayFields.indexOf(field) * 8);
    return all(
      row.set(i32.add(place("days"), i32.mul(from.get, i32.const(rowBytes)))),
      seen.set(place("seen")),
      whileTrue(
        i32.less(from.get, to.get),
        all(
          when(noisy.get, call(drift, from.get, particle.get)),
          day(exp, today, local),
          note(exp, seen),
          on(row, rowBytes),
          on(seen, seenWidth * 8),
          from.set(i32.add(from.get, i32.const(1))),
        ),
      ),
    );
  });

/** Bees, infested share, survival. */
const note = (exp: number, seen: Local): Code =>
  all(
    f64.store(seen.get, 0, head("bees")),
    f64.store(
      seen.get,
      8,
      choose(f64.div(head("infested"), head("bees")), f64.const(0), f64.more(head("bees"), f64.const(0))),
    ),
    f64.store(seen.get, 16, call(exp, f64.neg(head("hazard")))),
  );

function day(exp: number, today: Today, local: MakeLocal): Code {
  const bees = local("f64");
  const sums = [local("v128"), local("v128"), local("v128")] as const;
  const [first, middle, last] = sums;
  const [infested, patents, emerging, winterBees] = [local("f64"), local("f64"), local("f64"), local("f64")];
  const factor = (name: "contactNoise" | "layingNoise") => noiseFactor(exp, name, local);
  const [contactFactor, layingFactor] = [factor("contactNoise"), factor("layingNoise")];
  const oldest = (end: Place) => i32.sub(place(end), i32.const(ageBytes));
  const youngest = local("i32");
  return all(
    bees.set(head("bees")),
    addLoss(exp, today, bees),
    contactFactor.reckon,
    setInfestation(today, bees, contactFactor.value, local),
    ...sums.map((sum) => sum.set(pair.const(0, 0))),
    ageAll(today, sums, youngest, oldest, local),
    patents.set(pair.low(last.get)),
    infested.set(
      f64.add(f64.add(f64.add(pair.low(middle.get), pair.high(middle.get)), pair.high(first.get)), patents.get),
    ),
    when(f64.more(today("freed"), f64.const(0)), clearMites(today("freed"), local)),
    emerging.set(f64.load(nowhere, broodByte(broodDays - 1))),
    winterBees.set(f64.mul(emerging.get, today("winterShare"))),
    f64.store(place("summer"), 0, f64.mul(emerging.get, f64.sub(f64.const(1), today("winterShare")))),
    f64.store(place("winter"), 0, winterBees.get),
    setHead(
      "youngestWinter",
      choose(
        f64.const(0),
        f64.min(
          f64.add(head("youngestWinter"), f64.const(1)),
          f64.fromInteger(divided(i32.sub(oldest("winterEnd"), place("winter")))),
        ),
        f64.more(winterBees.get, f64.const(0)),
      ),
    ),
    ageCohorts(today("emerging"), local),
    layingFactor.reckon,
    ageBrood(
      f64.mul(f64.mul(today("eggs"), layingFactor.value), f64.div(bees.get, f64.add(bees.get, constant("careHalf")))),
      local,
    ),
    setHead("infested", f64.sub(infested.get, f64.mul(infested.get, today("freed")))),
    setHead("patent", f64.sub(patents.get, f64.mul(patents.get, today("freed")))),
    setHead("bees", f64.add(f64.add(infested.get, f64.add(pair.low(first.get), pair.high(last.get))), emerging.get)),
  );
}

/** Bytes of cells in ages: times 1/80 in whole numbers, as 52429 / 2^22. */
const divided = (bytes: Code): Code => i32.shiftRight(i32.mul(bytes, i32.const(52429)), i32.const(22));

function noiseFactor(exp: number, name: "contactNoise" | "layingNoise", local: MakeLocal) {
  const factor = local("f64");
  const noise = head(name);
  return {
    value: factor.get,
    reckon: all(factor.set(f64.const(1)), when(f64.notEqual(noise, f64.const(0)), factor.set(call(exp, noise)))),
  };
}

const addLoss = (exp: number, today: Today, bees: Local): Code => {
  const effective = f64.sub(bees.get, f64.mul(constant("lossInfested"), head("infested")));
  const small = f64.div(
    f64.const(1),
    f64.add(f64.const(1), call(exp, f64.div(f64.sub(effective, constant("lossBees")), constant("lossSpread")))),
  );
  const hazard = f64.mul(today("cold"), f64.add(constant("lossBase"), f64.mul(constant("lossSmall"), small)));
  return setHead("hazard", f64.add(head("hazard"), hazard));
};

function setInfestation(today: Today, bees: Local, factor: Code, local: MakeLocal): Code {
  const [force, differing] = [local("v128"), local("i32")];
  const share = choose(f64.div(head("patent"), bees.get), f64.const(0), f64.more(bees.get, f64.const(0)));
  const [susceptible, chance, y] = [local("v128"), local("v128"), local("v128")];
  const [at, end, cohort, into] = [local("i32"), local("i32"), local("i32"), local("i32")];
  const [y2, y4] = [local("v128"), local("v128")];
  const constantPair = (x: number) => pair.const(x, x);
  const falling = (from: number, by: number) => pair.sub(constantPair(from), pair.mul(constantPair(by), y.get));
  const quarter = ([a, b, c, d]: readonly [number, number, number, number]) =>
    pair.add(falling(a, b), pair.mul(falling(c, d), y2.get));
  return all(
    differing.set(choose(i32.add(place("matureAge"), i32.const(1)), place("cohorts"), areAlike)),
    force.set(pair.twice(f64.mul(f64.mul(f64.mul(head("contactRate"), factor), today("contact")), share))),
    at.set(place("youth")),
    end.set(i32.add(at.get, i32.mul(differing.get, i32.const(8)))),
    cohort.set(place("susceptibility")),
    into.set(place("infestation")),
    whileTrue(
      i32.less(at.get, end.get),
      all(
        susceptible.set(pair.mul(pair.load(at.get, 0), pair.load(cohort.get, 0))),
        y.set(
          pair.mul(
            pair.min(pair.mul(force.get, susceptible.get), constantPair(greatestHazard)),
            constantPair(1 / 2 ** doublings),
          ),
        ),
        y2.set(pair.mul(y.get, y.get)),
        y4.set(pair.mul(y2.get, y2.get)),
        chance.set(
          pair.mul(
            y.get,
            pair.add(
              quarter([1, 1 / 2, 1 / 6, 1 / 24]),
              pair.mul(
                pair.add(
                  quarter([1 / 120, 1 / 720, 1 / 5040, 1 / 40320]),
                  pair.mul(
                    pair.add(falling(1 / 362880, 1 / 3628800), pair.mul(constantPair(1 / 39916800), y2.get)),
                    y4.get,
                  ),
                ),
                y4.get,
              ),
            ),
          ),
        ),
        ...Array.from({ length: doublings }, () =>
          chance.set(pair.mul(chance.get, pair.sub(constantPair(2), chance.get))),
        ),
        pair.store(into.get, 0, chance.get),
        on(at, 16),
        on(cohort, 16),
        on(into, 16),
      ),
    ),
    // The oldest that was reckoned stands for all older ones.
    chance.set(
      pair.loadTwice(i32.add(place("infestation"), i32.mul(i32.sub(differing.get, i32.const(1)), i32.const(8))), 0),
    ),
    end.set(i32.add(place("infestation"), i32.mul(place("cohorts"), i32.const(8)))),
    whileTrue(i32.less(into.get, end.get), all(pair.store(into.get, 0, chance.get), on(into, 16))),
  );
}

const areAlike = f64.equal(head("alikeCohorts"), f64.fromInteger(place("cohorts")));

function clearMites(share: Code, local: MakeLocal): Code {
  const [cell, out, freed] = [local("i32"), local("f64"), local("f64")];
  const living = [1, 2, 3, 4, 5, 6, 7, 8];
  return all(
    cell.set(place("summer")),
    whileTrue(
      i32.less(cell.get, place("winterEnd")),
      all(
        out.set(f64.const(0)),
        ...living.map((stage) =>
          all(
            freed.set(f64.mul(f64.load(cell.get, stage * 8), share)),
            f64.store(cell.get, stage * 8, f64.sub(f64.load(cell.get, stage * 8), freed.get)),
            out.set(f64.add(out.get, freed.get)),
          ),
        ),
        f64.store(cell.get, 72, f64.add(f64.load(cell.get, 72), out.get)),
        on(cell, ageBytes),
      ),
    ),
  );
}

/** From the oldest down, two at a time; one is left over where their number is even. */
function ageCohorts(emerging: Code, local: MakeLocal): Code {
  const at = local("i32");
  const first = place("susceptibility");
  const isAlike = f64.equal(emerging, f64.load(first, 0));
  return when(
    i32.eqz(i32.and(isAlike, areAlike)),
    all(
      setHead("alikeCohorts", choose(f64.add(head("alikeCohorts"), f64.const(1)), f64.const(1), isAlike)),
      at.set(i32.add(first, i32.mul(i32.sub(place("cohorts"), i32.const(2)), i32.const(8)))),
      whileTrue(
        i32.more(at.get, first),
        all(pair.store(at.get, 0, pair.load(i32.sub(at.get, i32.const(8)), 0)), on(at, -16)),
      ),
      when(i32.eq(at.get, first), f64.store(first, 8, f64.load(first, 0))),
      f64.store(first, 0, emerging),
    ),
  );
}

function ageBrood(eggs: Code, local: MakeLocal): Code {
  const pairs = (broodDays - 1) / 2;
  const laid = local("f64");
  return all(
    laid.set(eggs),
    ...Array.from({ length: pairs }, (_, index) => {
      const day = broodDays - 2 - 2 * index;
      return pair.store(nowhere, broodByte(day), pair.load(nowhere, broodByte(day - 1)));
    }),
    f64.store(nowhere, broodByte(0), laid.get),
    f64.store(nowhere, broodByte(3), f64.mul(f64.load(nowhere, broodByte(3)), constant("eggSurvival"))),
    f64.store(nowhere, broodByte(9), f64.mul(f64.load(nowhere, broodByte(9)), constant("broodSurvival"))),
  );
}
