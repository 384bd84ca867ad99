import { describe, expect, test } from "vitest";
import type { ValueDefinition } from "../../checklist/meta-schema.ts";
import { judgeOf, type Parts } from "../../judge/testing/checklists.ts";
import { INSULATION_VOLTAGE } from "../../starters/electrical-parts.ts";
import { PORTABLE_CLASS_1 } from "../../starters/portable-class-1.ts";
import { edgeFaults, judgeReading } from "./edges.ts";
import {
  AS_NZS_CURRENT,
  AS_NZS_EARTH,
  EN_HEATING,
  EN_INSULATION,
  EN_SHORT_LEAD,
  EN_STEPS,
  EN_THICK,
  GENTLE_VOLTAGE,
  IEC_LEAKAGE,
  UK_CLASS_III,
  UK_CURRENT,
  UK_HEATING,
  UK_HEATING_FIRST,
  UK_INSULATION,
} from "./electrical-limits.ts";

const power = { rated_power: { title: "Rated power", type: "number", unit: "kW" } } as const;

describe("EN 50699: 0.3 Ohm to 5 m, 0.1 Ohm more per 7.5 m begun, at most 1 Ohm", () => {
  const stepped = PORTABLE_CLASS_1.checklist.values?.stepped_earth;
  const parts: Partial<Parts> = {
    particulars: PORTABLE_CLASS_1.checklist.particulars ?? {},
    values: { stepped: stepped ?? { const: 0 } },
  };
  const limit = { max: "stepped" };

  test.each([...EN_STEPS, { ...EN_SHORT_LEAD, by: EN_SHORT_LEAD.length }])(
    "$id: $by m may have $bound Ohm",
    ({ by, bound }) => {
      const particulars = { lead_length: by };
      expect(edgeFaults({ unit: "Ohm", bound, step: 0.001, limit, parts, particulars })).toEqual(
        [],
      );
    },
  );

  test("el-063: single cores above 1.5 mm² have a limit that no length widens", () => {
    expect(
      edgeFaults({ unit: "Ohm", bound: EN_THICK.bound, step: 0.001, limit: { max: 0.1 } }),
    ).toEqual([]);
  });

  test("one reading of one lead meets one rule and not the other: the rule is in the checklist", () => {
    const verdicts = (max: number | string, particulars = {}) =>
      judgeReading(0.29, "Ohm", [{ max }], parts, particulars).verdict;
    expect(verdicts("stepped", { lead_length: 5 })).toBe("pass");
    // 0.1 Ohm plus 5 m of 1.5 mm².
    expect(verdicts(0.1665)).toBe("fail");
    expect(verdicts(AS_NZS_EARTH[0]?.bound ?? 0)).toBe("pass");
  });
});

describe("insulation resistance", () => {
  test.each([...UK_INSULATION, ...EN_INSULATION])("$id: $of has at least $bound MOhm", (figure) => {
    expect(
      edgeFaults({ unit: "MOhm", bound: figure.bound, step: 0.01, limit: { min: figure.bound } }),
    ).toEqual([]);
  });

  test("two rules relax heating on opposite sides of a power, and each checklist keeps its own", () => {
    const least = (test: string): ValueDefinition => ({
      unit: "MOhm",
      formula: `${test} ? 0.3 : 1.0`,
    });
    const verdict = (test: string, rated_power: number) => {
      const parts = { particulars: power, values: { least: least(test) } };
      return judgeReading(0.5, "MOhm", [{ min: "least" }], parts, { rated_power }).verdict;
    };
    const british = "asset.rated_power < 3.0";
    const european = "asset.rated_power > 3.5";
    expect([1, 3, 3.5, 3.6].map((kw) => verdict(british, kw))).toEqual([
      "pass",
      "fail",
      "fail",
      "fail",
    ]);
    expect([1, 3, 3.5, 3.6].map((kw) => verdict(european, kw))).toEqual([
      "fail",
      "fail",
      "fail",
      "pass",
    ]);
  });

  test("el-072: 250 V is the voltage only where surge protection would be hurt", () => {
    const particulars = { surge_protected: { title: "Surge-protected", type: "boolean" } } as const;
    const judge = judgeOf({ particulars, properties: { x: INSULATION_VOLTAGE } });
    const verdict = (x: string, surge_protected: boolean) =>
      judge.judgePoint("x", { particulars: { surge_protected }, answers: { x } }).verdict;
    expect(verdict(String(GENTLE_VOLTAGE.volts), true)).toBe("pass");
    expect(verdict(String(GENTLE_VOLTAGE.volts), false)).toBe("fail");
    expect(verdict("500", false)).toBe("pass");
  });
});

describe("current in the protective conductor and touch current", () => {
  test.each([...UK_CURRENT, ...UK_CLASS_III, ...IEC_LEAKAGE, ...AS_NZS_CURRENT])(
    "$id: $of has at most $bound mA",
    ({ bound }) => {
      expect(edgeFaults({ unit: "mA", bound, step: 0.01, limit: { max: bound } })).toEqual([]);
    },
  );
  test.each(AS_NZS_EARTH)("$id: $of has at most $bound Ohm", ({ bound }) => {
    expect(edgeFaults({ unit: "Ohm", bound, step: 0.001, limit: { max: bound } })).toEqual([]);
  });

  const rate = { unit: "mA/kW", const: 0.75 };
  const ceiling = { unit: "mA", const: 5 };
  test.each([...UK_HEATING_FIRST, ...UK_HEATING])(
    "$id: heating of $by kW has at most $bound mA: 0.75 mA/kW up to 5 mA",
    ({ by, bound }) => {
      expect(
        edgeFaults({
          unit: "mA",
          bound,
          step: 0.01,
          limit: { max: "min(asset.rated_power * rate, ceiling)" },
          parts: { particulars: power, values: { rate, ceiling } },
          particulars: { rated_power: by },
        }),
      ).toEqual([]);
    },
  );

  test.each(EN_HEATING)("$id: by EN 50699 heating of $by kW has at most $bound mA", (figure) => {
    expect(
      edgeFaults({
        unit: "mA",
        bound: figure.bound,
        step: 0.01,
        limit: { max: "max(3.5, min(asset.rated_power * per_kw, 10.0))" },
        parts: { particulars: power, values: { per_kw: { unit: "mA/kW", const: 1 } } },
        particulars: { rated_power: figure.by },
      }),
    ).toEqual([]);
  });

  test("4 mA of one Class I appliance meets one rule and breaks another", () => {
    const verdicts = [3.5, 5].map((max) => judgeReading(4, "mA", [{ max }]).verdict);
    expect(verdicts).toEqual(["fail", "pass"]);
  });
});
