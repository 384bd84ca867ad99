import type { Fact } from "./fact.ts";

/** Every published figure of the collection, by area. */
export const PUBLISHED: readonly Fact[] = [];
