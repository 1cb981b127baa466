/** Prints how fast the project is, beside the goal of each figure. Absolute times depend on the machine: read them as ratios to the goal. */
import { calibrationRuns } from "./calibration/run.ts";
import { cloneToPage } from "./clone-to-page.ts";
import { deviceSpeed } from "./device-speed.ts";
import { differentialSpeed } from "./differential-speed.ts";
import type { Figure } from "./figure.ts";
import { pageSpeed } from "./page-speed.ts";
import { pageWeight } from "./page-weight.ts";
import { scale } from "./scale/scale.ts";
import { seasonSpeed } from "./season/season-speed.ts";
import { versus } from "./versus/versus.ts";

const families: Readonly<Record<string, () => Promise<readonly Figure[]>>> = {
  weight: pageWeight,
  differential: differentialSpeed,
  season: seasonSpeed,
  page: pageSpeed,
  device: deviceSpeed,
  clone: cloneToPage,
};

const options = process.argv.slice(2).filter((name) => name.startsWith("-"));
const chosen = process.argv.slice(2).filter((name) => !name.startsWith("-"));
const known = ["--versus", "--scale", ...Object.keys(calibrationRuns)];
if (options.some((option) => !known.includes(option)) || options.length > 1) {
  process.stderr.write(`There is no option ${options.join(" ")}. There are, one at a time: ${known.join(", ")}.\n`);
  process.exit(2);
}
const calibrationRun = calibrationRuns[options[0] ?? ""];
if (calibrationRun !== undefined) {
  const cases = Number(chosen[0] ?? calibrationRun.usual);
  if (!(Number.isInteger(cases) && cases > 0)) {
    process.stderr.write(`${options[0]} takes a number of cases, a whole number above 0; got "${chosen[0]}".\n`);
    process.exit(2);
  }
  process.exit(calibrationRun.run(cases) ? 0 : 1);
}
if (options[0] === "--scale") {
  const share = Number(chosen[0] ?? 0.1);
  if (!(share > 0 && share <= 1)) {
    process.stderr.write(`--scale takes a share of the whole, above 0 and at most 1; got "${chosen[0]}".\n`);
    process.exit(2);
  }
  await scale(share);
  process.exit();
}
if (options.length > 0) {
  versus(chosen);
  process.exit();
}
const unknown = chosen.filter((name) => !(name in families));
if (unknown.length > 0) {
  process.stderr.write(`There is no bench "${unknown.join(", ")}". There are: ${Object.keys(families).join(", ")}.\n`);
  process.exit(2);
}

for (const [name, family] of Object.entries(families)) {
  if (chosen.length > 0 && !chosen.includes(name)) continue;
  for (const { what, value, unit, goal } of await family()) {
    const held =
      goal === null ? "" : `goal ${goal} ${unit}, ratio ${(value / goal).toFixed(2)}${value <= goal ? "" : "  MISSED"}`;
    console.log(`${what.padEnd(64)} ${value.toFixed(value < 10 ? 2 : 1).padStart(9)} ${unit.padEnd(4)} ${held}`);
  }
}
