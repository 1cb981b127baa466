import { storageContract } from "../../tests/laws/storage-contract.ts";
import { memoryStore } from "./index.ts";

storageContract("memory", async (programme) => memoryStore({ programme }));
