import { BLOCK_SCHEMA, type Block } from "../checklist/block-schema.ts";
import type { Result } from "../shared/problem.ts";
import { compileSchema } from "./compile-schema.ts";

const check = compileSchema<Block>(BLOCK_SCHEMA);

/** Takes any value for a block, or tells what keeps it from being one. Never throws. */
export const parseBlock = (value: unknown): Result<Block> => check(value);
