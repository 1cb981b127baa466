#!/usr/bin/env node
/** Entrance of the command line. Loads the rest only under a Node that can run it. */
const needed = 24;
if (Number(process.versions.node.split(".")[0]) < needed) {
  process.stderr.write(
    `Skepsis needs Node ${needed} or newer; this is Node ${process.versions.node}. In a clone, "npm run -s skepsis --" brings its own.\n`,
  );
  process.exit(1);
} else {
  const { runProcess } = await import("./run-process.ts");
  process.exit(await runProcess(process.argv.slice(2)));
}

export {};
