/** The transcripts of docs/command-line.md are true. */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { said } from "../../src/views/cli/test-io.ts";

const page = readFileSync("docs/command-line.md", "utf8");
const transcripts = [...page.matchAll(/```console\n\$ (.+)\n([\s\S]*?)```/g)].map(([, command = "", shown = ""]) => ({
  command,
  shown,
}));

/** Words of a command line; single quotes keep a word together. */
const wordsOf = (line: string): string[] =>
  [...line.matchAll(/'([^']*)'|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? "");

it("has transcripts", () => {
  expect(transcripts.length).toBeGreaterThan(4);
});

it.each(transcripts)("$command", async ({ command, shown }) => {
  const [left = "", right] = command.split(" | ");
  const piped = right !== undefined && left.startsWith("echo ");
  const [program, ...argv] = wordsOf(piped ? right : left);
  expect(program).toBe("skepsis");
  const { out, err, status } = await said(argv, piped ? { stdin: wordsOf(left)[1] ?? "" } : {});
  expect(out + err + (status === 0 ? "" : `[exit status ${status}]\n`)).toBe(shown);
});
