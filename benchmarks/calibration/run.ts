/** What `npm run bench -- --calibration`, `--groups`, `--separation` and `--forecast` do; each takes a number of cases. */
import { writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { conditions } from "../../src/knowledge/index.ts";
import { seasonCalibration } from "../season/calibration.ts";
import { calibrate } from "./calibrate.ts";
import { testedRules } from "./group-rules.ts";
import { hardestPairs, separation } from "./separation.ts";
import { separationPicture } from "./separation-picture.ts";

const picture = path.join(
  path.dirname(path.dirname(path.dirname(fileURLToPath(import.meta.url)))),
  "docs/pictures/differential-separation.svg",
);

/** Each option, with the cases it takes when none are given; false when a limit was missed. */
export const calibrationRuns: Readonly<
  Record<string, { readonly usual: number; readonly run: (n: number) => boolean }>
> = {
  "--calibration": { usual: 4000, run: calibrate },
  "--groups": { usual: 4000, run: groups },
  "--separation": { usual: 1000, run: separate },
  "--forecast": { usual: 1000, run: seasonCalibration },
};

/** A table of the rules for groups, row by row. */
function groups(cases: number): boolean {
  console.log("signs  correlation  rule               error   slope  bits lost  said");
  for (const signs of [25, 69]) {
    for (const correlation of [0, 0.2, 0.4, 0.6]) {
      for (const { rule, calibration, bitsLost } of testedRules({ cases, seed: 1763, signs, correlation })) {
        const slope = calibration.recalibration.ok ? calibration.recalibration.value.slope.toFixed(3) : "none";
        const said = calibration.bins.reduce((sum, { n }) => sum + n, 0);
        const error = calibration.expectedError.toFixed(4);
        console.log(
          `${signs}     ${correlation.toFixed(1)}          ${rule.padEnd(18)} ${error}  ${slope}  ${bitsLost.toFixed(3)}      ${said}`,
        );
      }
    }
  }
  return true;
}

/** Writes the picture of which causes a full look tells apart, and prints the hardest pairs. */
function separate(looks: number): boolean {
  const found = separation({ looks, seed: 1763 });
  const all = found.causes.flatMap((_, a) => found.causes.slice(0, a).map((_other, b) => found.right[a]?.[b] ?? 1));
  const share = (below: number) => `${all.filter((right) => right < below).length} below ${100 * below}`;
  console.log(
    `${all.length} pairs of ${found.causes.length} causes: ${share(0.995)}, ${share(0.95)}, ${share(0.9)} of 100`,
  );
  for (const { one, other, right } of hardestPairs(found, 12)) {
    console.log(`${(100 * right).toFixed(1)}  ${conditions[one].term} / ${conditions[other].term}`);
  }
  writeFileSync(picture, separationPicture(found));
  return true;
}
