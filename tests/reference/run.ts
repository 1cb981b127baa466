/** Runs files of reference cases through the library: `run.ts [--values] [FILE…]`, without a file those kept here. */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { answerOf, disagreements, isSaidAsProblem, type ReferenceCase, spoken } from "./compare.ts";
import { loadMethods } from "./methods.ts";

const kept = fileURLToPath(new URL("./values/", import.meta.url));
const [options, named] = [true, false].map((wanted) =>
  process.argv.slice(2).filter((each) => each.startsWith("--") === wanted),
) as [string[], string[]];
const unknown = options.filter((each) => each !== "--values");
if (unknown.length > 0) {
  process.stderr.write(`There is no option ${unknown.join(", ")}. There is: --values.\n`);
  process.exit(2);
}
const files = named.length > 0 ? named : readdirSync(kept).map((name) => path.join(kept, name));

/** The cases of a file, or what is wrong with it. */
function casesOf(file: string): readonly ReferenceCase[] | string {
  try {
    const { cases } = JSON.parse(readFileSync(file, "utf8")) as { readonly cases?: readonly ReferenceCase[] };
    if (!Array.isArray(cases)) return "expected an object with a list of cases";
    return cases;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

const methods = await loadMethods();
let [passed, failed] = [0, 0];
const values: Record<string, unknown> = {};
for (const file of files) {
  const cases = casesOf(file);
  if (typeof cases === "string") {
    failed += 1;
    (options.length > 0 ? process.stderr : process.stdout).write(`${file}: ${cases}\n`);
    continue;
  }
  for (const each of cases) {
    if (options.includes("--values")) {
      const answer = answerOf(methods, each);
      if ("trouble" in answer) failed += 1;
      values[each.id] = "trouble" in answer ? { error: answer.trouble } : answer.got;
      continue;
    }
    const wrong = disagreements(methods, each);
    for (const { id, field, expected, got } of wrong) {
      console.log(`${id}${field === "" ? "" : ` ${field}`}: expected ${expected}, got ${got}`);
    }
    if (wrong.length === 0) passed += 1;
    else failed += 1;
  }
}
if (options.includes("--values")) {
  // What the library says is undefined is null here, as in the expected values.
  const plain = (name: string, value: unknown) => (isSaidAsProblem(value) ? null : spoken(name, value));
  console.log(JSON.stringify(values, plain, 1));
} else console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 && (passed > 0 || options.length > 0) ? 0 : 1;
