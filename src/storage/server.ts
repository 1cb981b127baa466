/** The service's entrance to storage: SQLite. Needs Node; the page never imports it. */
export * from "./backup.ts";
export * from "./contract.ts";
export { memoryStore } from "./memory.ts";
export * from "./server-store.ts";
export { OtherProgramme } from "./sqlite.ts";
