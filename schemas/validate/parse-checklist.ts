import { CHECKLIST_SCHEMA, type Checklist } from "../checklist/meta-schema.ts";
import type { Result } from "../shared/problem.ts";
import { compileSchema } from "./compile-schema.ts";

const check = compileSchema<Checklist>(CHECKLIST_SCHEMA);

/**
 * Takes any value for a checklist, or tells what keeps it from being one: at most 1 MB and 32
 * levels deep, then the meta-schema. A draft without `$defs` is accepted. Never throws.
 */
export const parseChecklist = (value: unknown): Result<Checklist> => check(value);
