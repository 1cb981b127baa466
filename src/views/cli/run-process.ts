/** Runs the command line as the whole work of this process. */
import { main } from "./main.ts";

/** Resolves to the exit status once everything said has flowed out of the process. */
export async function runProcess(argv: readonly string[]): Promise<number> {
  // A reader that has seen enough, such as head, closes the pipe: that is no trouble.
  process.stdout.on("error", (error: NodeJS.ErrnoException) => process.exit(error.code === "EPIPE" ? 0 : 1));
  const status = await main(argv);
  await Promise.all([flowedOut(process.stdout), flowedOut(process.stderr)]);
  return status;
}

const flowedOut = (stream: NodeJS.WriteStream): Promise<void> =>
  new Promise((resolve) => stream.write("", () => resolve()));
