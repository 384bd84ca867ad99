import { isFailure } from "../formulas/engine-type.ts";
import { roundSignificant } from "../shared/significant.ts";
import type { Names } from "./expression.ts";
import { type Given, unusable } from "./given.ts";
import type { PreparedPoint } from "./prepared.ts";

/**
 * Several readings as what is judged: their mean, or all of them. Exactly as many as the checklist
 * says, so that leaving the worst one out never helps.
 */
export function resolveMany(
  { several }: PreparedPoint,
  given: Extract<Given, { is: "many" }>,
  run: Names,
): Given {
  if (several === undefined) return unusable("not-an-answer", { kind: "reading" });
  const count = several.count(run);
  if (isFailure(count)) return { is: "unusable", why: count };
  const { readings } = given;
  if (readings.length !== count)
    return unusable(readings.length < count ? "too-few-readings" : "too-many-readings", {
      count,
      given: readings.length,
    });
  if (several.combine !== "mean") return given;
  if (readings.some(({ comparator }) => comparator !== "")) return unusable("censored-mean", {});
  const mean = readings.reduce((sum, { value }) => sum + value, 0) / readings.length;
  return Number.isFinite(mean)
    ? { is: "number", value: roundSignificant(mean), comparator: "" }
    : unusable("not-finite-reading", {});
}
