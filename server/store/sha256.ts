import { hash } from "node:crypto";
import type { SyncDigest } from "@roundbook/schemas";

export const sha256: SyncDigest = (bytes) => hash("sha256", bytes, "buffer");
