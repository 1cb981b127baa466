#!/usr/bin/env node
/** Entrance of the command line. Loads the rest only under a Node that can run it. */
const needed = 24;
if (Number(process.versions.node.split(".")[0]) < needed) {
  process.stderr.write(
    `Skepsis needs Node ${needed} or newer; this is Node ${process.versions.node}. In a clone, "npm run -s skepsis --" brings its own.\n`,
  );
  process.exitCode = 1;
} else {
  // A reader that has seen enough, such as head, closes the pipe: that is no trouble.
  process.stdout.on("error", (error: NodeJS.ErrnoException) => process.exit(error.code === "EPIPE" ? 0 : 1));
  const { main } = await import("./main.ts");
  process.exitCode = await main(process.argv.slice(2));
}

export {};
