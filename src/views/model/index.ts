/** View data: plain values for screens and papers. */
export * from "./paper.ts";
