/** What a command of the command line is, and how every command reports trouble. */
import { problemLine } from "../../reasoning/index.ts";
import type { Problem } from "../../units/index.ts";
import { problemSentence } from "../words/index.ts";
import type { Given } from "./arguments.ts";
import type { Flag } from "./flags.ts";
import type { Io } from "./io.ts";

/** 0 done, 1 a check failed or it was ended before it was done, 2 bad input. */
export type ExitStatus = 0 | 1 | 2;

export interface Command {
  readonly name: string;
  readonly summary: string;
  /** Words after the verb that are no flags, as help shows them: `FILE`. Null when there are none. */
  readonly operand: string | null;
  readonly flags: readonly Flag[];
  /** Fields of the input that no flag can say. */
  readonly onlyInJson?: readonly string[];
  readonly help: () => string;
  readonly run: (given: Given, io: Io) => Promise<ExitStatus>;
}

/** Says what does not fit: as one JSON value on standard output, or as sentences on standard error. */
export function reportUnfit(problems: readonly Problem[], verb: string, json: boolean, io: Io): ExitStatus {
  if (json) {
    io.out(`${JSON.stringify({ problems: problems.map((each) => problemLine(each, problemSentence)) })}\n`);
    return 2;
  }
  for (const each of problems) io.err(`${problemLine(each, problemSentence).message}\n`);
  io.err(`${verb === "" ? "skepsis help" : `skepsis help ${verb}`} shows what is expected.\n`);
  return 2;
}
