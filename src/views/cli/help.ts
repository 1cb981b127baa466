/** Help is made from the schemas, so it cannot drift from what the verbs take. */
import { type Shape, shapeInWords, type Verb } from "../../reasoning/index.ts";
import type { Command } from "./command.ts";
import { type Flag, flagsOf, isScalar, onlyInJson } from "./flags.ts";

const width = 100;

/** `text` broken into lines of at most 100 signs, each after `indent` spaces. */
function wrapped(text: string, indent: number): string {
  const pad = " ".repeat(indent);
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/)) {
    if (line && indent + line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else line = line ? `${line} ${word}` : word;
  }
  return [...lines, line].map((each) => `${pad}${each}\n`).join("");
}

/** All commands, one line each. */
export function overview(commands: readonly Command[], version: string): string {
  const column = Math.max(...commands.map(({ name }) => name.length)) + 2;
  return [
    `skepsis ${version}: from the first worried call about failing honey bee colonies to a checked outcome.\n\n`,
    "skepsis VERB [flags] [--input FILE|-] [--json]\n\n",
    ...commands.map(({ name, summary }) => `  ${name.padEnd(column)}${summary}\n`),
    `  ${"help".padEnd(column)}This page; skepsis help VERB for one verb.\n\n`,
    wrapped(
      "Exit status: 0 done (a lawful refusal too), 1 a check failed or it was ended on the way, 2 the input does not fit and nothing was written.",
      0,
    ),
  ].join("");
}

/** A flag on one line, its meaning on the next. */
export function flagHelp(flag: Flag): string {
  const sign = { value: "VALUE", switch: "", list: "VALUE,VALUE…", pairs: "NAME=VALUE", objects: "FIELD=VALUE,…" }[
    flag.kind
  ];
  const notes = [
    flag.shape.description ?? "",
    expectedBy(flag),
    flag.shape.default !== undefined && typeof flag.shape.default !== "object" ? `Default: ${flag.shape.default}.` : "",
    flag.kind === "pairs" || flag.kind === "objects" ? "May be repeated." : "",
  ];
  const text = notes.filter((note) => note !== "").join(" ");
  return `${`  --${flag.name} ${sign}`.trimEnd() + (flag.required ? "  (needed)" : "")}\n${text === "" ? "" : wrapped(text, 6)}`;
}

function expectedBy(flag: Flag): string {
  if (flag.kind === "switch") return "";
  if (flag.kind === "objects") {
    const fields = Object.entries(flag.shape.items?.properties ?? {});
    const inWords = fields.filter(([, shape]) => isScalar(shape));
    const rest = fields.filter(([, shape]) => !isScalar(shape)).map(([name]) => name);
    return (
      `Fields: ${inWords.map(([name, shape]) => `${name} (${shapeInWords(shape)})`).join("; ")}.` +
      (rest.length > 0 ? ` Only as JSON: ${rest.join(", ")}.` : "")
    );
  }
  if (flag.kind === "pairs") {
    const values = flag.shape.additionalProperties;
    return typeof values === "object" ? `Each value ${shapeInWords(values)}.` : "";
  }
  return `Expected: ${shapeInWords(flag.shape)}.`;
}

/** The page of a reasoning verb; `lists` adds the ids that may stand in its input. */
export function verbHelp(verb: Verb, lists: string, more: readonly Flag[] = []): string {
  const flags = [...flagsOf(verb.inputShape), ...more];
  const needed = (verb.inputShape.required ?? []).join(", ");
  const inJson = onlyInJson(verb.inputShape).map(([name, { description, ...rest }]) => {
    const text = [description ?? "", `Expected: ${shapeInWords(rest)}.`].filter((part) => part !== "").join(" ");
    return `  ${name}\n${wrapped(text, 6)}`;
  });
  return [
    `skepsis ${verb.name}: ${verb.summary}\n\n`,
    `Flags\n${flags.map(flagHelp).join("")}`,
    "  --input FILE|-\n      The same as one JSON object; flags win over it.\n",
    "  --json\n      One JSON value on standard output.\n\n",
    inJson.length === 0 ? "" : `Only as JSON, with --input\n${inJson.join("")}\n`,
    `${wrapped(`Input as JSON${needed ? ` (needed: ${needed})` : ""}, an example`, 0)}  ${JSON.stringify(verb.example)}\n\n`,
    `Answer as JSON\n${answerFields(verb.outputShape)}\n`,
    `Rests on\n${verb.assumptions.map((each) => wrapped(`- ${each}`, 2)).join("")}\n`,
    `Source\n${wrapped(verb.source, 2)}`,
    lists === "" ? "" : `\n${lists}`,
  ].join("");
}

function answerFields(shape: Shape): string {
  return Object.entries(shape.properties ?? {})
    .map(([name, field]) => {
      const inside = field.properties ?? field.items?.properties;
      const list = field.type === "array" ? "list: " : "";
      const text = field.description ?? (inside ? Object.keys(inside).join(", ") : shapeInWords(field));
      return wrapped(`${name}: ${list}${text}`, 2);
    })
    .join("");
}
