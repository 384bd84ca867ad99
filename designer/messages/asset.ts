import { type Words, wordsOf } from "@roundbook/runner/form";
import { ASSET_WORDS } from "./en-asset.ts";

export const aw: Words<typeof ASSET_WORDS> = wordsOf(ASSET_WORDS);
