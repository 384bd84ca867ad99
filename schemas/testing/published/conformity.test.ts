import { describe, expect, test } from "vitest";
import type { DecisionDefinition, LimitDefinition } from "../../checklist/limit-schema.ts";
import {
  BREAKDOWN,
  CONFORMITY,
  GUARD_BANDS,
  NEAR_LIMITS,
  NON_BINARY,
  SPEED,
  VISCOSITY,
  WANTED,
} from "./conformity.ts";
import { judgeReading } from "./edges.ts";

/** The normal distribution up to z, by Simpson's rule. */
const normal = (z: number): number => {
  const steps = 2000;
  const density = (x: number) => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * density((z * i) / steps);
  }
  return 0.5 + (sum * z) / steps / 3;
};

const by = (
  rule: DecisionDefinition["rule"],
  limit: LimitDefinition,
  U: number | string,
  guardFactor = 1,
): LimitDefinition => ({ ...limit, decision: { rule, uncertainty: U, guardFactor } });

const judged = (value: number, unit: string, ...limits: LimitDefinition[]) =>
  judgeReading(value, unit, limits);

/** Where a rule with a guard factor accepts up to, for a greatest value of 10 with u = 0.5. */
const acceptance = (r: number): number => {
  const limit = { max: 10 };
  if (r === 0) return judged(9, "1", limit).limits[0]?.bound ?? Number.NaN;
  const rule = r > 0 ? "guarded-acceptance" : "guarded-rejection";
  return judged(5, "1", by(rule, limit, 1, Math.abs(r))).limits[0]?.acceptance ?? Number.NaN;
};

describe("guard bands of ILAC-G8: w = r · U", () => {
  test.each(GUARD_BANDS)("$id: with r = $r the risk at the acceptance limit is $risk", (band) => {
    const accepted = acceptance(band.r);
    expect(accepted).toBeCloseTo(10 - band.r, 12);
    expect(1 - normal((10 - accepted) / 0.5)).toBeCloseTo(band.risk, 9);
  });

  test.each(WANTED)("$id: z = $z keeps the chance of conformity at $p", ({ p, z }) => {
    const accepted = acceptance(z / 2);
    expect(Math.abs(normal((10 - accepted) / 0.5) - p)).toBeLessThan(0.0001);
  });

  test("a reading exactly on the acceptance limit is accepted, a step beyond it is not", () => {
    const guarded = (value: number) =>
      judged(value, "1", by("guarded-acceptance", { max: 10 }, 1, 0.83)).verdict;
    expect([guarded(9.169), guarded(9.17), guarded(9.171)]).toEqual(["pass", "pass", "fail"]);
  });
});

describe("worked examples of JCGM 106", () => {
  test(`${BREAKDOWN.id}: with a chance of ${BREAKDOWN.p} it passes simply and not guarded`, () => {
    const { max, y, u, p } = BREAKDOWN;
    expect(Math.abs(normal((max - y) / u) - p)).toBeLessThan(0.0005);
    expect(judged(y, "V", { max }).verdict).toBe("pass");
    expect(judged(y, "V", by("guarded-acceptance", { max }, 2 * u)).verdict).toBe("fail");
    const open = judged(y, "V", by("non-binary", { max }, 2 * u));
    expect([open.limits[0]?.conformity, open.verdict]).toEqual(["conditional-pass", "advisory"]);
    // 0.92 of chance wanted: z = 1.4, and the reading lies exactly there.
    expect(judged(y, "V", by("guarded-acceptance", { max }, 2 * u, 0.7)).verdict).toBe("pass");
  });

  test(`${VISCOSITY.id}: limits closer than two guard bands accept nothing`, () => {
    const { min, max, y, u, p } = VISCOSITY;
    expect(Math.abs(normal((max - y) / u) - normal((min - y) / u) - p)).toBeLessThan(0.0005);
    expect(judged(y, "1", { min, max }).verdict).toBe("pass");
    for (let value = min; value <= max; value += 0.1)
      expect(judged(value, "1", by("guarded-acceptance", { min, max }, 2 * u)).verdict).not.toBe(
        "pass",
      );
    expect(judged(y, "1", by("guarded-rejection", { min, max }, 2 * u)).verdict).toBe("pass");
  });

  test(`${SPEED.id}: rejected only where the limit is exceeded beyond doubt, above 106.588 km/h`, () => {
    const limit = by("guarded-rejection", { max: SPEED.max }, "0.04 * answers.x", SPEED.z / 2);
    const at = (value: number) => judged(value, "km/h", limit).verdict;
    expect([at(SPEED.max), at(106.587), at(106.589), at(SPEED.used)]).toEqual([
      "pass",
      "pass",
      "fail",
      "fail",
    ]);
    expect(Math.abs(SPEED.max / (1 - SPEED.relative * SPEED.z) - SPEED.exact)).toBeLessThan(0.001);
  });
});

describe("one reading near its limit, by each decision rule", () => {
  test.each(NEAR_LIMITS)("$id: $of at $y, guarded: $guarded", (near) => {
    const limit = "min" in near ? { min: near.min } : { max: near.max };
    const distance = "min" in near ? near.y - near.min : near.max - near.y;
    expect(Math.abs(normal(distance / (near.U / 2)) - near.p)).toBeLessThan(0.0005);
    expect(judged(near.y, near.unit, limit).verdict).toBe("pass");
    const guarded = judged(near.y, near.unit, by("guarded-acceptance", limit, near.U));
    expect([guarded.verdict, guarded.limits[0]?.acceptance]).toEqual([
      near.guarded,
      near.acceptance,
    ]);
  });

  test(`${NON_BINARY.id}: four outcomes, and what is not proven is never a plain pass`, () => {
    const { min, U, y } = NON_BINARY;
    const outcome = (value: number) => {
      const found = judged(value, "Cel", by("non-binary", { min }, U));
      return [found.limits[0]?.conformity, found.verdict];
    };
    expect(outcome(y)).toEqual(["conditional-fail", "fail"]);
    expect(outcome(51)).toEqual(["pass", "pass"]);
    expect(outcome(50.9)).toEqual(["conditional-pass", "advisory"]);
    expect(outcome(50)).toEqual(["conditional-pass", "advisory"]);
    expect(outcome(49.9)).toEqual(["conditional-fail", "fail"]);
    expect(outcome(48.9)).toEqual(["fail", "fail"]);
  });

  test("an uncertainty that nobody knows decides nothing", () => {
    const limit: LimitDefinition = { max: 10, decision: { rule: "guarded-acceptance" } };
    expect(judged(1, "1", limit).verdict).toBe("undecided");
    expect(judged(1, "1", by("guarded-acceptance", { max: 10 }, -1)).verdict).toBe("undecided");
  });

  test("k = 2 and k = 1.96 differ: the factor is in the checklist", () => {
    const risk = (k: number) => 1 - normal((10 - acceptance(k / 2)) / 0.5);
    expect(risk(2)).toBeCloseTo(0.02275, 5);
    expect(risk(1.96)).toBeCloseTo(0.024998, 5);
  });
});

test("what is not ours says why", () => {
  const others = CONFORMITY.filter(({ used }) => used === "not-ours");
  expect(others.map(({ reason = "" }) => reason.length > 20)).toEqual(others.map(() => true));
  expect(others).toHaveLength(7);
});
