/** The slow noise of a particle as a WebAssembly program: the stream of the particle and day, two normal numbers of it. */
import { normalQuantileRatios } from "../../../numerics/index.ts";
import { all, type Code, call, choose, f64, i32, i64, type Local, when, written } from "./encoder.ts";
import { constant, head, place, setHead } from "./memory-code.ts";

/**
 * `quantile(p)` of the standard normal curve for 0 < p < 1.
 *
 * @param log index of the function ln x
 */
export const normalQuantileProgram = (log: number) =>
  written({ takes: ["f64"], gives: ["f64"] }, ([p], local) => {
    if (!p) return [];
    const [offset, r, z] = [local("f64"), local("f64"), local("f64")];
    const { centre, middle, far } = normalQuantileRatios;
    const isLow = f64.less(offset.get, f64.const(0));
    const tail = all(
      r.set(f64.sqrt(f64.neg(call(log, choose(p.get, f64.sub(f64.const(1), p.get), isLow))))),
      when(
        f64.most(r.get, f64.const(5)),
        z.set(ratio(middle, f64.sub(r.get, f64.const(1.6)), local)),
        z.set(ratio(far, f64.sub(r.get, f64.const(5)), local)),
      ),
      when(isLow, z.set(f64.neg(z.get))),
    );
    const near = f64.sub(f64.const(0.180625), f64.mul(offset.get, offset.get));
    return all(
      offset.set(f64.sub(p.get, f64.const(0.5))),
      when(
        f64.most(f64.abs(offset.get), f64.const(0.425)),
        z.set(f64.mul(offset.get, ratio(centre, near, local))),
        tail,
      ),
      z.get,
    );
  });

/** The value of one polynomial over another; `x` is reckoned once. */
function ratio(
  [top, bottom]: readonly [readonly number[], readonly number[]],
  x: Code,
  local: (type: "f64") => Local,
): Code {
  const at = local("f64");
  const value = (coefficients: readonly number[]): Code =>
    coefficients
      .slice(1)
      .reduce<Code>(
        (sum, each) => f64.add(f64.mul(sum, at.get), f64.const(each)),
        f64.const(coefficients[0] as number),
      );
  return all(at.set(x), f64.div(value(top), value(bottom)));
}

const lowWord = i64.const(0xffffffffn);
const [factor0, factor1] = [i64.const(0xd2511f53n), i64.const(0xcd9e8d57n)];
const [step0, step1] = [i64.const(0x9e3779b9n), i64.const(0xbb67ae85n)];
const upper = (product: Code): Code => i64.shiftRight(product, i64.const(32n));

/**
 * `drift(day, particle)` moves the noise of the colony in memory on by a day, as `driftNoise` does with the stream of
 * `particleStream`: Philox4x32-10, block 0, two words for each normal number.
 *
 * @param quantile index of the function of normal quantiles
 */
export const driftNoiseProgram = (quantile: number) =>
  written({ takes: ["i32", "i32"], gives: [] }, ([day, particle], local) => {
    if (!day || !particle) return [];
    const counter = [local("i64"), local("i64"), local("i64"), local("i64")] as const;
    const key = [local("i64"), local("i64")] as const;
    const products = [local("i64"), local("i64")] as const;
    const [c0, c1, c2, c3] = counter;
    const [k0, k1] = key;
    const [p0, p1] = products;
    const round = all(
      p0.set(i64.mul(factor0, c0.get)),
      p1.set(i64.mul(factor1, c2.get)),
      c0.set(i64.xor(i64.xor(upper(p1.get), c1.get), k0.get)),
      c1.set(i64.and(p1.get, lowWord)),
      c2.set(i64.xor(i64.xor(upper(p0.get), c3.get), k1.get)),
      c3.set(i64.and(p0.get, lowWord)),
    );
    const nextKey = all(
      k0.set(i64.and(i64.add(k0.get, step0), lowWord)),
      k1.set(i64.and(i64.add(k1.get, step1), lowWord)),
    );
    const rounds = Array.from({ length: 10 }, (_, index) => (index < 9 ? all(round, nextKey) : round));
    return all(
      c0.set(i64.const(0n)),
      c1.set(i64.const(0n)),
      c2.set(i64.fromWord(particle.get)),
      c3.set(i64.fromWord(day.get)),
      k0.set(i64.fromWord(place("seedLow"))),
      k1.set(i64.fromWord(place("seedHigh"))),
      ...rounds,
      moved("contactNoise", "contactStep", call(quantile, uniform(c0, c1))),
      moved("layingNoise", "layingStep", call(quantile, uniform(c2, c3))),
    );
  });

/** A number strictly between 0 and 1 from two words, as `randomStream` makes it. */
function uniform(high: Local, low: Local): Code {
  const bits = (word: Local) => f64.fromWord(i32.shiftRight(i32.fromLong(word.get), i32.const(6)));
  return f64.mul(
    f64.add(f64.add(f64.mul(bits(high), f64.const(0x4000000)), bits(low)), f64.const(0.5)),
    f64.const(1 / 0x10000000000000),
  );
}

function moved(noise: "contactNoise" | "layingNoise", step: "contactStep" | "layingStep", normal: Code): Code {
  return setHead(noise, f64.add(f64.mul(constant("memory"), head(noise)), f64.mul(constant(step), normal)));
}
