import type { PointDefinition, SeveralDefinition } from "@roundbook/schemas";
import { readBound } from "./limit-edit.ts";

export const FEWEST_READINGS = 2;
export const MOST_READINGS = 50;

/** A whole number of readings, or a formula for it; nothing for a number that cannot be one. */
export const readCount = (
  text: string,
  fewest = FEWEST_READINGS,
  most = MOST_READINGS,
): SeveralDefinition["count"] | undefined => {
  const count = readBound(text);
  if (typeof count !== "number") return count;
  return Number.isInteger(count) && count >= fewest && count <= most ? count : undefined;
};

export const setSeveral = (
  point: PointDefinition,
  members: Partial<SeveralDefinition>,
): PointDefinition => ({
  ...point,
  several: { count: 3, combine: "each", ...point.several, ...members },
});

type Wait = NonNullable<NonNullable<PointDefinition["ask"]>["wait"]>;

/** Seconds to wait before it is read; without either bound nothing is waited for. */
export const setWait = (
  point: PointDefinition,
  bound: keyof Wait,
  seconds: number | undefined,
): PointDefinition => {
  const { wait: before, ...ask } = point.ask ?? {};
  const { [bound]: _, ...rest } = before ?? {};
  const wait: Wait = seconds === undefined ? rest : { ...rest, [bound]: seconds };
  return { ...point, ask: Object.keys(wait).length > 0 ? { ...ask, wait } : ask };
};
