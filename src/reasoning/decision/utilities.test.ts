/** The best of three utilities, and samples that cannot change anything. */
import { expect, it } from "vitest";
import { bestByUtility, valueOfSampling } from "./index.ts";

it("[DE200] at a tie waiting comes before acting, and a test is named only when better", () => {
  expect(bestByUtility({ wait: 0, testFirst: 0, actNow: 0 })).toBe("wait");
  expect(bestByUtility({ wait: 0, testFirst: 3, actNow: 3 })).toBe("act-now");
  expect(bestByUtility({ wait: 0, testFirst: 3.1, actNow: 3 })).toBe("test-first");
  expect(bestByUtility({ wait: 0, testFirst: -1, actNow: -2 })).toBe("wait");
});

it("[DE201] acting dearer than the whole colony: no result leads to it, the threshold is above 1", () => {
  const found = valueOfSampling({
    belief: { a: 2, b: 3 },
    lossAtFull: 100,
    actCost: 120,
    sizes: [0, 8],
    costPerBee: 0,
    fixedCost: 0,
  });
  expect(found.threshold).toBe(1.2);
  for (const { actFrom, neverActs, evsi } of found.rows) {
    expect(actFrom).toBeNull();
    expect(neverActs).toMatchObject({ code: "no-result-leads-to-acting", severity: "noted" });
    expect(evsi).toBeCloseTo(0, 12);
  }
});

it("[DE201] without a sample acting is from 0 on where it is better anyway, and nothing is said", () => {
  const found = valueOfSampling({
    belief: { a: 8, b: 2 },
    lossAtFull: 100,
    actCost: 50,
    sizes: [0],
    costPerBee: 0,
    fixedCost: 0,
  });
  expect(found.rows[0]).toEqual({ bees: 0, evsi: 0, actFrom: 0, neverActs: null, net: 0 });
});
