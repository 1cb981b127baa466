/** Examples in Markdown: blocks of TypeScript that run, and command lines with what they print. */
import { mkdtempSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { said } from "../../src/views/cli/test-io.ts";
import { agrees, type Shown, shownIn, valueShown } from "./agrees.ts";
import { root } from "./tree.ts";

/** A fenced block of a document. */
export interface Block {
  /** What stands after the fence, such as `ts run` or `console`. */
  readonly tag: string;
  /** Line of the fence in the file, from 1. */
  readonly line: number;
  readonly lines: readonly string[];
}

/** What an example shows and what came out. */
export interface Disagreement {
  readonly line: number;
  readonly example: string;
  readonly shown: unknown;
  readonly got: unknown;
}

/** Every fenced block of a text, in order. */
export function blocksOf(text: string): readonly Block[] {
  const blocks: Block[] = [];
  let open: { tag: string; line: number; lines: string[] } | null = null;
  for (const [index, line] of text.split(/\r?\n/).entries()) {
    const fence = /^```(.*)$/.exec(line);
    if (open && fence) {
      blocks.push(open);
      open = null;
    } else if (open) open.lines.push(line);
    else if (fence) open = { tag: (fence[1] ?? "").trim(), line: index + 1, lines: [] };
  }
  if (open) throw new Error(`the block that opens in line ${open.line} never closes`);
  return blocks;
}

export const isRun = ({ tag }: Block): boolean => tag === "ts run";

/** Command lines are run when they call this program; others, such as how to clone, are words. */
export const isConsole = ({ tag, lines }: Block): boolean => tag === "console" && lines.some(isCommand);

/** Runs a block of TypeScript; the lines `expression // → value` that are not true. A block that shows nothing fails. */
export async function untrue(block: Block): Promise<readonly Disagreement[]> {
  const { imports, code, shown } = parse(block);
  if (shown.length === 0) throw new Error(`the block in line ${block.line} shows no value`);
  const scope = Object.assign({}, ...(await Promise.all(imports.map(imported)))) as Record<string, unknown>;
  const got: unknown[] = [];
  const run = new Function(...Object.keys(scope), "__got", `"use strict"; return (async () => {\n${code}\n})();`);
  await run(...Object.values(scope), (value: unknown) => got.push(value));
  return shown.flatMap(({ call, value, line }, index) => {
    const wanted = valueShown(value);
    return agrees(got[index], wanted) ? [] : [{ line, example: call, shown: wanted, got: got[index] }];
  });
}

interface Import {
  readonly names: string;
  readonly from: string;
}

interface Parsed {
  readonly imports: readonly Import[];
  readonly code: string;
  readonly shown: readonly (Shown & { readonly line: number })[];
}

/** A statement ends with a semicolon at the end of a line, an expression with the value it shows. */
function parse({ line: fence, lines }: Block): Parsed {
  const imports: Import[] = [];
  const code: string[] = [];
  const shown: (Shown & { line: number })[] = [];
  let pending: string[] = [];
  for (const [index, line] of lines.entries()) {
    const [, names, from] = /^import \{ (.+) \} from "([^"]+)";$/.exec(line) ?? [];
    if (names !== undefined && from !== undefined) {
      imports.push({ names, from });
      continue;
    }
    const result = shownIn(line.trim());
    if (result) {
      const call = [...pending, result.call].join("\n");
      code.push(`__got((${call.replace(/;$/, "")}));`);
      shown.push({ call, value: result.value, line: fence + 1 + index });
      pending = [];
    } else if (line.trimEnd().endsWith(";")) {
      code.push(...pending, line);
      pending = [];
    } else pending.push(line);
  }
  return { imports, code: [...code, ...pending].join("\n"), shown };
}

/** The names asked for, from an entrance given by its path from the project's root. */
async function imported({ names, from }: Import): Promise<Record<string, unknown>> {
  if (!/^src\/(.+\/)?(index|device|server)\.ts$/.test(from)) throw new Error(`${from} is no entrance of a folder`);
  const module = (await import(pathToFileURL(path.join(root, from)).href)) as Record<string, unknown>;
  return Object.fromEntries(
    names.split(",").map((each) => {
      const [name = "", as = name] = each.trim().split(/\s+as\s+/);
      if (!(name in module)) throw new Error(`${from} has no ${name}`);
      return [as, module[name]];
    }),
  );
}

const isCommand = (line: string): boolean => /^\$ (echo '[^']*' \| )?(npm run -s skepsis -- |skepsis )/.test(line);

/**
 * Runs the command lines of a console block; those that print something else than is shown. An exit status other than 0
 * stands on a last line, `[exit status 2]`; `…` alone stands for any lines.
 */
export async function misprinted(block: Block): Promise<readonly Disagreement[]> {
  const wrong: Disagreement[] = [];
  for (const { command, line, printed } of commandsOf(block)) {
    const { argv, stdin } = await callOf(command);
    const { out, err, status } = await said(argv, { stdin, folder: root, env: { SKEPSIS_DATA: noRecords() } });
    const got = `${out}${err}${status === 0 ? "" : `[exit status ${status}]`}`.trimEnd().split("\n");
    if (!fits(got, printed)) wrong.push({ line, example: command, shown: printed, got });
  }
  return wrong;
}

/** A folder without records: what a person keeps in the project's own must not show in an example. */
const noRecords = (): string => path.join(mkdtempSync(path.join(tmpdir(), "skepsis-documents-")), "none");

interface Command {
  readonly command: string;
  readonly line: number;
  readonly printed: readonly string[];
}

function commandsOf({ line: fence, lines }: Block): readonly Command[] {
  const commands: { command: string; line: number; printed: string[] }[] = [];
  let continues = false;
  for (const [index, line] of lines.entries()) {
    const last = commands.at(-1);
    const text = line.replace(/\\$/, "");
    if (continues && last) last.command += ` ${text.replace(/^> ?/, "").trim()}`;
    else if (line.startsWith("$ ")) {
      commands.push({ command: text.slice(2).trim(), line: fence + 1 + index, printed: [] });
    } else last?.printed.push(line);
    continues = line.endsWith("\\");
  }
  return commands
    .filter(({ command }) => isCommand(`$ ${command} `))
    .map((each) => ({ ...each, printed: each.printed.join("\n").trimEnd().split("\n") }));
}

interface Call {
  readonly argv: readonly string[];
  readonly stdin: string;
}

/** The words after the program's name, and what comes in: from `echo … |`, or from the file after `<`. */
async function callOf(command: string): Promise<Call> {
  const [, echoed = "", own = ""] = /^(?:echo '([^']*)' \| )?(.*)$/.exec(command) ?? [];
  const words = wordsOf(own);
  const argv = words.slice(words[0] === "npm" ? words.indexOf("--") + 1 : 1);
  const reads = argv.indexOf("<");
  if (reads < 0) return { argv, stdin: echoed };
  return { argv: argv.slice(0, reads), stdin: await readFile(path.join(root, argv[reads + 1] ?? ""), "utf8") };
}

/** Words of a command line as a shell splits them: quotes keep a word together. */
const wordsOf = (line: string): readonly string[] =>
  [...line.matchAll(/(?:'[^']*'|"[^"]*"|[^\s'"])+/g)].map(([word]) => word.replaceAll(/'([^']*)'|"([^"]*)"/g, "$1$2"));

/** Whether the lines got are those shown, where `…` may stand for any number of lines. */
export function fits(got: readonly string[], shown: readonly string[]): boolean {
  const [first, ...rest] = shown;
  if (first === undefined) return got.length === 0;
  if (first.trim() === "…") {
    return rest.length === 0 || got.some((_, index) => fits(got.slice(index), rest));
  }
  return got[0]?.trimEnd() === first.trimEnd() && fits(got.slice(1), rest);
}
