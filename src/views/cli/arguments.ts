/** Reads the words after the verb. What does not fit becomes a Problem in words, never a stack trace. */
import { parseArgs } from "node:util";
import { listed, nearestName } from "../../reasoning/index.ts";
import { type Problem, problem } from "../../units/index.ts";
import { type Flag, kebab } from "./flags.ts";

export interface Given {
  readonly json: boolean;
  readonly help: boolean;
  readonly input: string | null;
  /** In the order typed. Words are empty for a switch. */
  readonly flags: readonly { readonly flag: Flag; readonly words: string }[];
  readonly positionals: readonly string[];
  readonly problems: readonly Problem[];
}

const common = ["json", "input", "help"] as const;

/** `onlyInJson` names fields that are none of the flags: whoever types one as a flag is told where it goes. */
export function readArguments(
  argv: readonly string[],
  flags: readonly Flag[],
  takesPositionals: boolean,
  onlyInJson: readonly string[] = [],
): Given {
  const options = Object.fromEntries(
    flags.map(({ name, kind }) => [name, { type: kind === "switch" ? "boolean" : "string" } as const]),
  );
  const { tokens } = parseArgs({
    args: [...argv],
    options: {
      ...options,
      json: { type: "boolean" },
      input: { type: "string", short: "i" },
      help: { type: "boolean", short: "h" },
    },
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const given: { flag: Flag; words: string }[] = [];
  const positionals: string[] = [];
  const problems: Problem[] = [];
  let afterUnknown = false;
  const seen = { json: false, help: false, input: null as string | null };
  for (const token of tokens) {
    if (token.kind === "positional") {
      if (takesPositionals) positionals.push(token.value);
      else if (!afterUnknown)
        problems.push(problem("argument-unexpected", "blocked", null, { given: token.value, expected: "a flag" }));
    } else if (token.kind === "option") {
      const flag = flags.find((each) => each.name === token.name);
      if (token.name === "json" || token.name === "help") seen[token.name] = true;
      else if (token.name === "input") {
        if (token.value === undefined) problems.push(needsValue("input", "a file name, or - for standard input"));
        else seen.input = token.value;
      } else if (!flag) problems.push(unknownFlag(token.rawName, flags, onlyInJson));
      else if (flag.kind !== "switch" && token.value === undefined) problems.push(needsValue(flag.name, "a value"));
      else given.push({ flag, words: token.value ?? "" });
      afterUnknown = flag === undefined && !(common as readonly string[]).includes(token.name);
    }
  }
  return { ...seen, flags: given, positionals, problems: [...problems, ...saidTwice(given)] };
}

/** What one place can hold only once: a flag with one value or list, and a NAME of a flag of pairs. */
function saidTwice(given: readonly { readonly flag: Flag; readonly words: string }[]): readonly Problem[] {
  const places = given.flatMap(({ flag: { name, kind }, words }): readonly Said[] => {
    if (kind === "objects") return [];
    if (kind !== "pairs") return [{ place: `--${name}`, flag: name, words }];
    return words
      .split(",")
      .map((pair) => ({ place: `--${name} ${pair.split("=")[0]?.trim()}`, flag: name, words: pair }));
  });
  const twice = [...Map.groupBy(places, ({ place }) => place).values()].filter((same) => same.length > 1);
  return twice.flatMap((same) => {
    const [first] = same;
    if (first === undefined) return [];
    const said = same.map(({ words }) => words.trim()).join(" and ");
    return [problem("said-twice", "blocked", `--${first.flag}`, { given: said, expected: "each once" })];
  });
}

/** What was said of one place. */
interface Said {
  readonly place: string;
  readonly flag: string;
  readonly words: string;
}

const needsValue = (name: string, expected: string): Problem =>
  problem("flag-empty", "blocked", `--${name}`, { expected });

function unknownFlag(rawName: string, flags: readonly Flag[], onlyInJson: readonly string[]): Problem {
  const names = [...flags.map(({ name }) => name), ...common];
  const field = onlyInJson.find((name) => `--${kebab(name)}` === rawName || `--${name}` === rawName);
  if (field !== undefined)
    return problem("flag-unknown", "blocked", rawName, { expected: `${field} as JSON, with --input` });
  const nearest = nearestName(rawName.replace(/^-+/, ""), names);
  return problem("flag-unknown", "blocked", rawName, {
    expected: nearest ? `--${nearest}` : `one of ${listed(names.map((name) => `--${name}`))}`,
  });
}
