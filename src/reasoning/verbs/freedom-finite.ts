/** `freedom-finite`: what one round found among few apiaries, of which a good part was tested. */
import * as z from "zod";
import { answered } from "../../units/index.ts";
import { twoStageFinite } from "../surveillance/index.ts";
import { count, share } from "./fields.ts";
import { underField } from "./part.ts";
import { verb } from "./verb.ts";

const places = count.min(1).max(5000);

const input = z
  .strictObject({
    clusters: places.describe("Apiaries in all, tested or not."),
    infested: places.describe("How many of them are supposed infested: the design prevalence in apiaries."),
    tested: z
      .array(
        z.strictObject({
          count: count.max(5000).describe("apiaries tested alike"),
          sensitivity: share.describe("chance that an infested one of them is found"),
        }),
      )
      .max(2000)
      .describe("Apiaries tested, and the chance that an infested one of them is found."),
  })
  .refine(({ tested }) => tested.reduce((sum, each) => sum + each.count, 0) <= 5000, {
    message: "no more than 5000 in all",
    path: ["tested"],
  });

const output = z.strictObject({
  sensitivity: z.number().describe("chance that the round finds at least one, exact"),
  approximate: z.number().describe("the shortcut, with the mean sensitivity"),
  tested: z.number().int(),
  byInfested: z
    .array(z.strictObject({ infested: z.number().int(), sensitivity: z.number() }))
    .describe("the same if fewer or more were infested"),
  method: z.string(),
  rule: z.string(),
});

/** So many rows show how the answer moves with the number infested. */
const mostRows = 20;

export const freedomFinite = verb({
  name: "freedom-finite",
  family: "freedom",
  summary: "What one round would have found among few apiaries, exactly.",
  assumptions: [
    "Those tested are a random draw of all, without putting back.",
    "An infested one is found with its own sensitivity, independently of the others.",
    "A test never finds what is not there.",
  ],
  source: "Cameron & Baldock 1998, Preventive Veterinary Medicine 34:19–30; exact recursion: own.",
  example: { clusters: 40, infested: 3, tested: [{ count: 15, sensitivity: 0.9 }] },
  input,
  output,
  run: ({ clusters, infested, tested }) => {
    const sensitivities = tested.flatMap((each) => Array.from({ length: each.count }, () => each.sensitivity));
    const round = (supposed: number) => twoStageFinite({ clusters, infested: supposed, sensitivities });
    const found = underField(round(infested), "sensitivities", "tested");
    if (!found.ok) return found;
    const most = Math.min(clusters, Math.max(10, 3 * infested));
    const rows = Math.min(mostRows, most);
    return answered({
      sensitivity: found.value.exact,
      approximate: found.value.approximate,
      tested: sensitivities.length,
      byInfested: Array.from({ length: rows }, (_, index) => Math.ceil(((index + 1) * most) / rows)).flatMap((each) => {
        const other = round(each);
        return other.ok ? [{ infested: each, sensitivity: other.value.exact }] : [];
      }),
      method: "exact-without-replacement",
      rule: "SV158",
    });
  },
});
