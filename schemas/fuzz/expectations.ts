import { expect } from "vitest";
import { isPlain } from "../shared/measure.ts";
import type { Problem } from "../shared/problem.ts";
import { resolves } from "./pointer.ts";

/** The value itself, so that whoever writes to any part of it throws. */
export const frozen = <T>(value: T): T => {
  if (typeof value !== "object" || value === null || Object.isFrozen(value)) return value;
  if (Array.isArray(value) || isPlain(value)) {
    for (const part of Object.values(value)) frozen(part);
    Object.freeze(value);
  }
  return value;
};

/** Every problem names a place that is there. */
export const expectPlaces = (problems: readonly Problem[], doc: unknown): void => {
  expect(problems.filter(({ pointer }) => !resolves(doc, pointer))).toEqual([]);
};
