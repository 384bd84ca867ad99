import { ANSWER_DEFS } from "./answer-types.ts";
import { pointKind } from "./guards.ts";
import type { Checklist } from "./meta-schema.ts";

/**
 * The document as it is issued: exactly the answer types its points use stand under `$defs`, so
 * that it validates answers by itself. Idempotent; the canonical hash of the outcome is the
 * checklist's identity.
 */
export const issueDocument = (doc: Checklist): Checklist => {
  const kinds = new Set(Object.values(doc.properties).map(pointKind));
  const names = [...kinds, "absent", "writtenText"] as const;
  const $defs = Object.fromEntries(names.map((name) => [name, ANSWER_DEFS[name]]));
  return { ...doc, $defs };
};
