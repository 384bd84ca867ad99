import { createHash } from "node:crypto";
import type { SyncDigest } from "@roundbook/schemas";

export const sha256: SyncDigest = (bytes) => createHash("sha256").update(bytes).digest();
