/** Every distribution of src/numerics under the law kit. */
import {
  beta,
  betaBinomial,
  binomial,
  chiSquare,
  gamma,
  hypergeometric,
  normal,
  poisson,
  studentT,
} from "../../src/numerics/index.ts";
import { obeysDistributionLaws } from "./distribution-laws.ts";

obeysDistributionLaws("NU6", "binomial 59, 0.05", binomial({ n: 59, p: 0.05 }));
obeysDistributionLaws("NU6", "binomial 1", binomial({ n: 1, p: 0.7 }));
obeysDistributionLaws("NU6", "binomial 20000, 0.3", binomial({ n: 20_000, p: 0.3 }));
obeysDistributionLaws("NU6", "hypergeometric 60, 6, 20", hypergeometric({ population: 60, marked: 6, drawn: 20 }));
obeysDistributionLaws("NU6", "hypergeometric 50, 45, 30", hypergeometric({ population: 50, marked: 45, drawn: 30 }));
obeysDistributionLaws(
  "NU6",
  "hypergeometric 1e6, 3e5, 2000",
  hypergeometric({ population: 1e6, marked: 3e5, drawn: 2000 }),
);
obeysDistributionLaws("NU6", "beta-binomial 50, 0.5, 9.5", betaBinomial({ n: 50, a: 0.5, b: 9.5 }));
obeysDistributionLaws("NU6", "beta-binomial 30, 0.2, 0.1", betaBinomial({ n: 30, a: 0.2, b: 0.1 }));
obeysDistributionLaws("NU6", "beta-binomial 300, 1e5, 2e5", betaBinomial({ n: 300, a: 1e5, b: 2e5 }));
obeysDistributionLaws("NU6", "Poisson 0.3", poisson({ mean: 0.3 }));
obeysDistributionLaws("NU6", "Poisson 1500", poisson({ mean: 1500 }));
obeysDistributionLaws("NU6", "beta 2, 3", beta({ a: 2, b: 3 }));
obeysDistributionLaws("NU6", "beta 0.5, 20.5", beta({ a: 0.5, b: 20.5 }));
obeysDistributionLaws("NU6", "beta 5000, 300", beta({ a: 5000, b: 300 }));
obeysDistributionLaws("NU6", "gamma 0.3, 2", gamma({ shape: 0.3, rate: 2 }));
obeysDistributionLaws("NU6", "gamma 400, 0.1", gamma({ shape: 400, rate: 0.1 }));
obeysDistributionLaws("NU6", "chi-square 3", chiSquare({ df: 3 }));
obeysDistributionLaws("NU6", "normal 10, 2", normal({ mean: 10, sd: 2 }));
obeysDistributionLaws("NU6", "Student t 7.5", studentT({ df: 7.5 }));
obeysDistributionLaws("NU6", "Student t 1", studentT({ df: 1 }));
