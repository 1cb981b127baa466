/** The sentences people read. */
export * from "./paper.ts";
