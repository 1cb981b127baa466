/** How a colony and its tracheal mites go through the year: the daily model, what people do to it, what is seen of it. */

export * from "./actions.ts";
export * from "./age-bees.ts";
export * from "./binomial-draw.ts";
export * from "./calendar.ts";
export * from "./closed-forms/growth-roots.ts";
export * from "./closed-forms/hive-foragers.ts";
export * from "./closed-forms/reproduction-number.ts";
export * from "./colony.ts";
export * from "./course.ts";
export * from "./day.ts";
export * from "./drivers.ts";
export * from "./interventions/formic.ts";
export * from "./interventions/menthol.ts";
export * from "./interventions/oil-patty.ts";
export * from "./interventions/requeen.ts";
export * from "./layout.ts";
export * from "./measures.ts";
export * from "./observe.ts";
export * from "./parameters.ts";
export * from "./particles.ts";
export * from "./problems.ts";
export * from "./rates.ts";
export * from "./start-colony.ts";
export * from "./whole-bees.ts";
