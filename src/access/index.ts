/** Who may see and do what: pure tables, asked by the service and the page alike. */
export * from "./entries.ts";
export * from "./password.ts";
export * from "./place.ts";
export * from "./roles.ts";
