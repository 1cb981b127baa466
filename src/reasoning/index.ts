/** The façade: what views ask of the reasoning. Plain values in the trade's words; the verbs with their schemas. */
export * as bench from "./bench/index.ts";
export * as control from "./control/index.ts";
export * as decision from "./decision/index.ts";
export * as differential from "./differential/index.ts";
export * as dynamics from "./dynamics/index.ts";
export * as efficacy from "./efficacy/index.ts";
export * as experience from "./experience/index.ts";
export * as nextStep from "./next-step/index.ts";
export * as sampling from "./sampling/index.ts";
export * as site from "./site/index.ts";
export * as surveillance from "./surveillance/index.ts";
export * from "./verbs/index.ts";
