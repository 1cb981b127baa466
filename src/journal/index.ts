/** What was written down: entries, their kinds, codec and chain. */
export * from "./entry.ts";
export * from "./kinds/index.ts";
