/** The device's entrance to storage: IndexedDB and the exchange with a service. Nothing of Node is reachable here. */
import type { Hash } from "../journal/index.ts";
import type { DeviceFile } from "./device-files.ts";
import type { FileExchange } from "./file-exchange.ts";

export * from "./contract.ts";
export * from "./device-contract.ts";
export * from "./device-removal.ts";
export { openDeviceStore } from "./device-store.ts";
export { recordingTrouble } from "./device-trouble.ts";
export * from "./exchange.ts";
export { fileHash } from "./file-hash.ts";
export { memoryStore } from "./memory.ts";

/** A file that the service holds; null when it has not come there, may not be read, or is not what it is called. */
export async function fetchFile(exchange: FileExchange, sha256: Hash): Promise<DeviceFile | null> {
  const { fetchFile: fetched } = await import("./file-exchange.ts");
  return fetched(exchange, sha256);
}
