/** Bees of all ages on by a day, two classes at a time: what `ageBees` does, to the same bits. */
import { all, type Code, f64, i32, type Local, pair, whileTrue } from "./encoder.ts";
import { constant, head, type MakeLocal, on, place, type Today } from "./memory-code.ts";
import { ageBytes, type Place } from "./memory-map.ts";

/** Summer bees in the hive, foragers, winter bees: each age takes what waits from the one before. */
export function ageAll(
  today: Today,
  sums: readonly [Local, Local, Local],
  youngest: Local,
  oldest: (end: Place) => Code,
  local: MakeLocal,
): Code {
  const [cell, age] = [local("i32"), local("i32")];
  const moving = [local("v128"), local("v128"), local("v128"), local("v128"), local("v128")] as const;
  const nobody = all(...moving.map((each) => each.set(pair.const(0, 0))));
  const pass = passOf({ cell, age, moving, sums }, local);
  const join = (end: Place): Code =>
    all(
      ...moving.map((each, index) =>
        pair.store(oldest(end), index * 16, pair.add(pair.load(oldest(end), index * 16), each.get)),
      ),
    );
  return all(
    nobody,
    cell.set(place("summer")),
    age.set(place("infestation")),
    pass.under(today("hiveSurvival"), today("hiveSurvivalPatent")),
    pass.until("foragers"),
    pass.under(today("foragerSurvival"), today("foragerSurvivalPatent")),
    pass.until("summerEnd"),
    join("summerEnd"),
    nobody,
    youngest.set(i32.fromDouble(head("youngestWinter"))),
    cell.set(i32.add(place("winter"), i32.mul(youngest.get, i32.const(ageBytes)))),
    age.set(i32.add(place("infestation"), i32.mul(youngest.get, i32.const(8)))),
    pass.under(today("winterSurvival"), today("winterSurvivalPatent")),
    pass.until("winterEnd"),
    join("winterEnd"),
  );
}

function passOf(
  of: {
    readonly cell: Local;
    readonly age: Local;
    readonly moving: readonly [Local, Local, Local, Local, Local];
    readonly sums: readonly [Local, Local, Local];
  },
  local: MakeLocal,
) {
  const { cell, age, moving, sums } = of;
  const [m0, m1, m2, m3, m4] = moving;
  const [first, middle, last] = sums;
  const [survival, goes] = [local("f64"), local("f64")];
  const [cleanAndNewest, stay, go, patentAndCleared, goPatent] = [
    ...[local("v128"), local("v128"), local("v128"), local("v128"), local("v128")],
  ] as [Local, Local, Local, Local, Local];
  const bees = [local("v128"), local("v128"), local("v128"), local("v128"), local("v128")] as const;
  const [x0, x1, x2, x3, x4] = bees;
  const [alive, sum] = [local("v128"), local("v128")];
  const take = (index: 0 | 1 | 2 | 3 | 4): Code =>
    all(bees[index].set(pair.load(cell.get, index * 16)), pair.store(cell.get, index * 16, moving[index].get));
  const latent = (before: Local, now: Local) =>
    pair.add(pair.mul(now.get, stay.get), pair.mul(pair.between(before.get, now.get), go.get));
  const end = local("i32");
  return {
    under: (today: Code, patent: Code): Code =>
      all(
        survival.set(today),
        goes.set(f64.mul(survival.get, constant("latentAdvance"))),
        stay.set(pair.twice(f64.sub(survival.get, goes.get))),
        go.set(pair.twice(goes.get)),
        cleanAndNewest.set(pair.of(survival.get, f64.sub(survival.get, goes.get))),
        patentAndCleared.set(pair.of(patent, survival.get)),
        goPatent.set(pair.of(goes.get, f64.const(0))),
      ),
    until: (to: Place): Code =>
      all(
        end.set(place(to)),
        whileTrue(
          i32.less(cell.get, end.get),
          all(
            // One pair of classes after the other, so that few are held at a time.
            take(0),
            alive.set(pair.mul(x0.get, cleanAndNewest.get)),
            // Of the clean bees the caught are taken away, to the first latent stage they are added.
            m0.set(
              pair.add(
                alive.get,
                pair.xor(pair.mul(pair.lowTwice(alive.get), pair.loadTwice(age.get, 0)), pair.const(-0, 0)),
              ),
            ),
            first.set(pair.add(first.get, m0.get)),
            take(1),
            m1.set(latent(x0, x1)),
            take(2),
            m2.set(latent(x1, x2)),
            sum.set(pair.add(m1.get, m2.get)),
            take(3),
            m3.set(latent(x2, x3)),
            middle.set(pair.add(middle.get, pair.add(sum.get, m3.get))),
            take(4),
            m4.set(
              pair.add(pair.mul(x4.get, patentAndCleared.get), pair.mul(pair.between(x3.get, x4.get), goPatent.get)),
            ),
            last.set(pair.add(last.get, m4.get)),
            on(cell, ageBytes),
            on(age, 8),
          ),
        ),
      ),
  };
}
