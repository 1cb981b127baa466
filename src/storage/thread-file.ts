/** Where the file of a thread lies: beside its caller, with the caller's ending, among the sources and in the built program. */
import path from "node:path";

/** Address of a thread's file; `caller` is `import.meta.url`. */
export const threadFile = (name: string, caller: string): URL => new URL(`./${name}${path.extname(caller)}`, caller);
