/** What was written down: entries, their kinds, seals, codec and chain. */
export * from "./attached-file.ts";
export * from "./chain-walk.ts";
export * from "./codec.ts";
export * from "./entry.ts";
export * from "./file-bytes.ts";
export * from "./hash.ts";
export * from "./id.ts";
export * from "./kinds/index.ts";
export * from "./read.ts";
export * from "./seal.ts";
export * from "./shape.ts";
export * from "./verify.ts";
