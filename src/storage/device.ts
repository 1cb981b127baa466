/** The device's entrance to storage: IndexedDB and the exchange with a service. Nothing of Node is reachable here. */
export * from "./contract.ts";
export * from "./device-store.ts";
export { memoryStore } from "./memory.ts";
