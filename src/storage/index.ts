/** What every store can do, and the one that keeps in memory. The others: `device.ts` and `server.ts`. */
export * from "./contract.ts";
export { memoryStore } from "./memory.ts";
export { toolDevice } from "./own-devices.ts";
