/** The command line, `skepsis VERB …`. */
export { type Io, processIo } from "./io.ts";
export { commands, main } from "./main.ts";
export { runProcess } from "./run-process.ts";
