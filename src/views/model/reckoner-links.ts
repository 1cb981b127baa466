/**
 * Addresses of the reckoner that open with the numbers of a case, so that a question can be taken further.
 *
 * @module views/model
 */
import type { MethodName } from "../../reasoning/index.ts";
import type { Estimate } from "../../units/index.ts";
import type { Weighing } from "./done/choice.ts";
import type { CheckView } from "./worked/check.ts";

/** A method with the values of its fields as they are typed there: so many in 100 where the field asks for that. */
const address = (method: MethodName, typed: Readonly<Record<string, number>>): string => {
  const fields = Object.entries(typed).map(([field, value]) => `${field}=${Number(value.toPrecision(12))}`);
  return `/reckoner/${method}?${fields.join("&")}`;
};

/**
 * The range of a counted share by every method; of none found, what could have been missed.
 * @example
 * rangeAddress({ value: 0.34, n: 50 })  // → "/reckoner/intervals?positive=17&examined=50"
 */
export const rangeAddress = ({ value, n }: Pick<Estimate, "value" | "n">): string =>
  value === 0 && n
    ? address("none-found", { examined: n })
    : address("intervals", { positive: Math.round(value * (n ?? 0)), examined: n ?? 0 });

/** The same address, with the question of the case to go back to. */
export const fromCase = (address: string, caseId: string, question: number): string =>
  `${address}&from=${encodeURIComponent(`/cases/${caseId}/${question}`)}`;

/**
 * What looking at more bees would be worth, with the belief, the price of acting and the bench of a choice. What the
 * choice does not know (a price for one bee, the loss at full infestation) stays empty and is asked for there.
 */
export const moreBeesAddress = ({ belief, prices, test }: Weighing): string =>
  address("value-of-sampling", {
    a: belief.a,
    b: belief.b,
    actCost: prices.actCost,
    fixedCost: prices.testCost,
    sensitivity: 100 * test.sensitivity,
    specificity: 100 * test.specificity,
    sizes: test.bees,
  });

/** The reduction against untreated colonies by every form, with the counts before and after; null without a comparator. */
export function reductionAddress({ treated, control }: Pick<CheckView, "treated" | "control">): string | null {
  if (!control) return null;
  const counts = {
    treatedBefore: treated.before,
    treatedAfter: treated.after,
    controlBefore: control.before,
    controlAfter: control.after,
  };
  return address(
    "reduction",
    Object.fromEntries(
      Object.entries(counts).flatMap(([look, { infested, examined }]) => [
        [`${look}.found`, infested],
        [`${look}.of`, examined],
      ]),
    ),
  );
}
