/** Intervals of a proportion: the names of the reference cases on ours. */
import {
  clopperPearsonInterval,
  type Interval,
  jeffreysInterval,
  wilsonInterval,
} from "../../../src/numerics/index.ts";

interface Counts {
  readonly x: number;
  readonly n: number;
  readonly conf?: number;
}

const ends = ({ low, high }: Interval) => ({ lo: low, hi: high });

export const methods = {
  ci_clopper_pearson: ({ x, n, conf = 0.95 }: Counts) => ends(clopperPearsonInterval({ x, n, level: conf })),
  ci_wilson: ({ x, n, conf = 0.95 }: Counts) => ends(wilsonInterval({ x, n, level: conf })),
  ci_jeffreys: ({ x, n, conf = 0.95 }: Counts) => ends(jeffreysInterval({ x, n, level: conf })),
};
