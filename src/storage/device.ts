/** The device's entrance to storage: IndexedDB and the exchange with a service. Nothing of Node is reachable here. */
export * from "./contract.ts";
export * from "./device-contract.ts";
export * from "./device-removal.ts";
export { openDeviceStore } from "./device-store.ts";
export { recordingTrouble } from "./device-trouble.ts";
export * from "./exchange.ts";
export { memoryStore } from "./memory.ts";
