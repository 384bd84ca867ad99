import { createHash, randomBytes } from "node:crypto";
import { type Content, commitBytes } from "@roundbook/schemas";

/** SHA-256 in hex that stands in an entry for a text kept beside the log. */
export const commitOf = (salt: string, text: string): string =>
  createHash("sha256").update(commitBytes(salt, text)).digest("hex");

/** A salted commitment to personal text, and the text to keep beside the log. */
export function commitText(text: string): { commitment: { commit: string }; content: Content } {
  const salt = randomBytes(16).toString("hex");
  const commit = commitOf(salt, text);
  return { commitment: { commit }, content: { commit, salt, text } };
}
