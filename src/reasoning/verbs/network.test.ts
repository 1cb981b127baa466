/** `network` against thirty-two states summed in Python. */
import { expect, it } from "vitest";
import reference from "../../../tests/reference/values/diagnosis.json" with { type: "json" };
import { network } from "./network.ts";
import type { AnswerOf } from "./verb.ts";

type Answer = AnswerOf<typeof network>;
interface Kept {
  readonly id: string;
  readonly input: {
    readonly prior: readonly number[];
    readonly leak: readonly number[];
    readonly link: readonly (readonly number[])[];
    readonly evidence: Readonly<Record<string, number>>;
  };
  readonly expected: {
    readonly p_evidence: number;
    readonly posterior: readonly number[];
    readonly entropy_bits: number;
    readonly p_no_disease: number;
    readonly top_states: readonly { readonly state: readonly number[]; readonly p: number }[];
    readonly eig_joint_bits?: Readonly<Record<string, number>>;
    readonly eig_sum_of_marginals_bits?: Readonly<Record<string, number>>;
  };
}
const kept = (reference.cases as unknown as readonly Kept[]).filter(({ id }) => id.startsWith("net_"));

const asked = ({ prior, leak, link, evidence }: Kept["input"]) => {
  const signs = (state: number) =>
    Object.entries(evidence).flatMap(([sign, seen]) => (seen === state ? [Number(sign) + 1] : []));
  return { priors: prior, leaks: leak, links: link, present: signs(1), absent: signs(0) };
};

it.each(kept.map((each) => [each.id, each] as const))(
  "[DX1] %s: posteriors, states and bits",
  (_id, { input, expected }) => {
    const reply = network.ask(asked(input));
    if (reply.kind !== "answered") return expect.fail(JSON.stringify(reply.problems));
    const found = reply.value as Answer;
    const near = (got: number | undefined, wanted: number) => expect(got ?? Number.NaN).toBeCloseTo(wanted, 9); // exact sums
    near(found.evidenceProbability, expected.p_evidence);
    near(found.entropyBits, expected.entropy_bits);
    near(found.noCause, expected.p_no_disease);
    for (const [index, each] of expected.posterior.entries()) near(found.causes[index]?.after, each);
    for (const [index, { state, p }] of expected.top_states.entries()) {
      near(found.states[index]?.probability, p);
      expect(found.states[index]?.causes).toEqual(state.flatMap((each, cause) => (each === 1 ? [cause + 1] : [])));
    }
    const bits = (sign: string) => found.next.find((each) => each.sign === Number(sign) + 1);
    for (const [sign, each] of Object.entries(expected.eig_joint_bits ?? {})) near(bits(sign)?.bits, each);
    for (const [sign, each] of Object.entries(expected.eig_sum_of_marginals_bits ?? {}))
      near(bits(sign)?.bitsOfSingleCauses, each);
  },
);

it("the most telling sign stands first; there were five networks to compare", () => {
  expect(kept).toHaveLength(5);
  const found = (network.ask(network.example) as { value: Answer }).value;
  expect(found.next.map(({ sign }) => sign)).toEqual([5, 4, 3]);
});

it("[DX200] a sign that nothing can bring contradicts the network: a lawful refusal", () => {
  const reply = network.ask({ priors: [0.2], leaks: [0], links: [[0]], present: [1] });
  expect(reply).toMatchObject({ kind: "refused", by: ["evidence-contradicts-model"] });
});

it("a short row, a sign that is not there, and one in both lists are named", () => {
  const fieldsOf = (over: object) => network.ask({ ...network.example, ...over }).problems.map(({ field }) => field);
  expect(fieldsOf({ links: [[0.1]] })).toEqual(["links"]);
  expect(fieldsOf({ present: [7] })).toEqual(["present"]);
  expect(fieldsOf({ absent: [1] })).toEqual(["absent"]);
});
