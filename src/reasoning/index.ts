/** The façade: what views ask of the reasoning. Plain values in the trade's words; the verbs with their schemas. */
export * from "./verbs/index.ts";
