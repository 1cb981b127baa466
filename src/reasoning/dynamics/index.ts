/** How a colony and its tracheal mites go through the year: the daily model, what people do to it, what is seen of it. */
export * from "./age-bees.ts";
export * from "./colony.ts";
export * from "./day.ts";
export * from "./drivers.ts";
export * from "./layout.ts";
export * from "./measures.ts";
export * from "./observe.ts";
export * from "./parameters.ts";
export * from "./rates.ts";
