/** The service's entrance to storage: SQLite and PostgreSQL. Needs Node; the page never imports it. */
export * from "./backup.ts";
export type { StoreReport } from "./check.ts";
export type { SettledApart } from "./check-apart.ts";
export { type ChunkJob, type ChunkQueue, openChunkQueue } from "./chunk-queue.ts";
export * from "./contract.ts";
export { type DatabaseWay, wayTo, withoutPassword } from "./database-address.ts";
export * from "./files-contract.ts";
export { OtherProgramme } from "./keeping.ts";
export * from "./members-contract.ts";
export { memoryStore } from "./memory.ts";
export type { ChunkName, ChunkToKeep, KeptForecast, NightStanding, Nights } from "./nights.ts";
export { StoreTrouble } from "./patience.ts";
export * from "./records.ts";
export { openServerStore, type ServerSettings, type ServerStore } from "./server-store.ts";
export { threadFile } from "./thread-file.ts";
