import type { RefusalCode } from "@roundbook/schemas";
import { Refusal } from "../usecases/refusal.ts";

/** What was looked for, or "not found" with a code that names it. */
export function found<T>(value: T | null | undefined, code: RefusalCode): T {
  if (value === null || value === undefined) throw new Refusal("not-found", code);
  return value;
}

/** A page size as the query writes it; the reads have their own default. */
export const asLimit = (limit: string | undefined): number | undefined =>
  limit === undefined ? undefined : Number(limit);
