import { describe, expect, test } from "vitest";
import type { ValueDefinition } from "../../checklist/meta-schema.ts";
import { row } from "../../judge/testing/checklists.ts";
import { roundSignificant } from "../../shared/significant.ts";
import { FLEXIBLE_CONDUCTOR, JOINTS } from "../../starters/electrical-parts.ts";
import { convert } from "../../units/units.ts";
import { edgeFaults, judgeReading } from "./edges.ts";
import {
  CLASS_2_PLAIN,
  CLASS_5_PLAIN,
  CLASS_5_TINNED,
  COPPER_FACTORS,
  type ConductorFigure,
  LEAD_ON_LIMIT,
  LEADS,
  LEGACY,
  TABLE_FACTORS,
  WARM_LEAD,
} from "./electrical-conductors.ts";

const particulars = {
  length: { title: "Length", type: "number", unit: "m" },
  csa: { title: "Cross-section", type: "number", unit: "mm2" },
  celsius: { title: "Temperature in °C", type: "number" },
} as const;

const perMetre = (figures: readonly ConductorFigure[]): ValueDefinition => ({
  unit: "Ohm/m",
  table: {
    policy: "unique",
    inputs: ["asset.csa"],
    rules: figures.map(({ csa, perKm }) => row([csa], convert(perKm, "Ohm/km", "Ohm/m") ?? -1)),
  },
});

describe.each([
  ["class 5, plain copper", CLASS_5_PLAIN],
  ["class 5, tinned copper", CLASS_5_TINNED],
  ["classes 1 and 2, plain copper", CLASS_2_PLAIN],
])("IEC 60228, %s", (_, figures) => {
  const parts = { particulars, values: { per_m: perMetre(figures) } };

  test.each(figures.map(({ id, csa, perKm }) => [id, csa, perKm] as const))(
    "%s: a kilometre of %d mm² has at most %d Ohm",
    (_id, csa, bound) => {
      expect(
        edgeFaults({
          unit: "Ohm",
          bound,
          step: 0.01,
          limit: { max: "asset.length * per_m" },
          parts,
          particulars: { length: 1000, csa },
        }),
      ).toEqual([]);
    },
  );

  test("a size that the standard does not have is never interpolated", () => {
    const limits = [{ max: "asset.length * per_m" }];
    const given = { length: 1000, csa: LEGACY.csa };
    const judged = judgeReading(LEGACY.perKm, "Ohm", limits, parts, given);
    expect([judged.verdict, judged.why.code, judged.bound]).toEqual(["undecided", "no-rule", null]);
  });
});

test("el-022: a checklist may name the old size itself, and then it has a limit of its own", () => {
  expect(
    edgeFaults({
      unit: "Ohm",
      bound: LEGACY.perKm,
      step: 0.1,
      limit: { max: "asset.length * per_m" },
      parts: { particulars, values: { per_m: perMetre([...CLASS_5_PLAIN, LEGACY]) } },
      particulars: { length: 1000, csa: LEGACY.csa },
    }),
  ).toEqual([]);
});

describe("temperature correction to 20 °C: two published constants, each in the checklist", () => {
  const factor = (formula: string, celsius: number) =>
    judgeReading(0, "1", [{ max: formula }], { particulars }, { celsius }).bound ?? Number.NaN;
  const table = (celsius: number) => factor("250.0 / (230.0 + asset.celsius)", celsius);
  const copper = (celsius: number) => factor("254.5 / (234.5 + asset.celsius)", celsius);

  test.each(TABLE_FACTORS)("$id: the table's factor at $celsius °C is $factor", (figure) => {
    expect(Math.abs(table(figure.celsius) - figure.factor)).toBeLessThanOrEqual(0.0005);
  });

  test.each(COPPER_FACTORS)("$id: the copper constant at $celsius °C is $factor", (figure) => {
    expect(Math.abs(copper(figure.celsius) - figure.factor)).toBeLessThanOrEqual(0.0001);
  });

  test("up to 35 °C they differ by less than 0.2 %, at 70 °C by more", () => {
    const apart = (celsius: number) => Math.abs(table(celsius) / copper(celsius) - 1);
    for (const celsius of [5, 10, 15, 20, 30, 35]) expect(apart(celsius)).toBeLessThan(0.002);
    expect(apart(70)).toBeGreaterThan(0.002);
  });

  test("el-050: a warm lead has a higher limit by the coefficient that the checklist names", () => {
    const { length, csa, celsius, limit } = WARM_LEAD;
    const values = {
      joints: JOINTS,
      per_m: FLEXIBLE_CONDUCTOR,
      warm: { formula: "1.0 + 0.00393 * (asset.celsius - 20.0)" },
    };
    const max = "joints + asset.length * per_m * warm";
    const given = { length, csa, celsius };
    const judged = judgeReading(0.2, "Ohm", [{ max }], { particulars, values }, given);
    expect(Math.abs((judged.bound ?? Number.NaN) - limit)).toBeLessThanOrEqual(0.0001);
    expect(judged.bound).toBeGreaterThan(LEAD_ON_LIMIT.reading);
  });
});

describe("0.1 Ohm plus the lead", () => {
  const parts = { particulars, values: { joints: JOINTS, per_m: FLEXIBLE_CONDUCTOR } };
  const limit = { max: "joints + asset.length * per_m" };

  test.each(LEADS)("$id: $length m of $csa mm² may have $limit Ohm", (lead) => {
    const { length, csa, limit: bound } = lead;
    expect(
      edgeFaults({ unit: "Ohm", bound, step: 0.0001, limit, parts, particulars: { length, csa } }),
    ).toEqual([]);
  });

  test("el-051: a reading exactly on the limit that was worked out passes", () => {
    const judged = judgeReading(LEAD_ON_LIMIT.reading, "Ohm", [limit], parts, {
      length: 10,
      csa: 1.5,
    });
    expect([judged.verdict, judged.bound]).toEqual(["pass", LEAD_ON_LIMIT.reading]);
    expect(roundSignificant(0.1 + 0.133)).toBe(LEAD_ON_LIMIT.reading);
  });

  test("a longer lead never has a tighter limit, and a thicker one never a looser", () => {
    const bound = (length: number, csa: number) =>
      judgeReading(0, "Ohm", [limit], parts, { length, csa }).bound ?? Number.NaN;
    for (const [length, next] of [
      [1, 2],
      [2, 10],
      [10, 50],
    ] as const) {
      for (const csa of [0.5, 0.75, 1, 1.5, 2.5, 4])
        expect(bound(next, csa)).toBeGreaterThan(bound(length, csa));
      expect(bound(length, 2.5)).toBeLessThan(bound(length, 1.5));
    }
  });
});
