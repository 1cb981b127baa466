/** Sentences of `allocate`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { list, whole } from "../numbers.ts";
import { figure, hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

type Answer = Answers["allocate"];

export const allocate = {
  asks: "How many to test in each group of risk, at the least cost?",
  under: "Testing where the risk is high saves tests, as far as the risks are known.",
  fields: {
    designPrevalence: { label: "Infested over all, of 100", hint: "The least that must not be missed.", per: 100 },
    sensitivity: { label: "Of 100 infested ones, found", per: 100 },
    target: { label: "Found, times of 100", per: 100 },
    strata: {
      label: "Groups of risk",
      hint: "One line a group: relative risk, share of all (0 to 1; all make 1), cost of testing one, how many there are. The last two may be left out.",
    },
  },
  says: ({ units, cost, sensitivity, representativeUnits, groups }: Answer) =>
    `**${whole(units)} to test: ${list(groups.map((each) => `${whole(each.units)} of group ${each.stratum}`))}.** They find it ${hundred(sensitivity)} times in 100 and cost ${figure(cost)}. A sample over all groups by their shares would need ${whole(representativeUnits)}.`,
  bars: "To test in each group",
  group: (group: number) => `Group ${group}`,
  groups: "Groups of risk",
  units: "To test",
  byRisk: "Cheapest",
  byShare: "Over all by share, on average",
  label: (rows: readonly { readonly name: string; readonly units: number }[]) =>
    rows.map(({ name, units }) => `${name}: ${whole(units)}`).join("; "),
} satisfies MethodWords<Answer> & Record<string, unknown>;
