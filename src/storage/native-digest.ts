/** SHA-256 by Node itself, several times as fast as the one that runs everywhere. */
import { hash } from "node:crypto";
import type { Digest } from "../journal/index.ts";

export const nativeDigest: Digest = (bytes) => hash("sha256", bytes, "hex");
