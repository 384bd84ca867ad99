import { describe, expect, test } from "vitest";
import type { ValueDefinition } from "../../checklist/meta-schema.ts";
import { row } from "../../judge/testing/checklists.ts";
import { FLEXIBLE_CONDUCTOR } from "../../starters/electrical-parts.ts";
import { convert } from "../../units/units.ts";
import { expectEdge, judgeReading } from "./edges.ts";
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
  t: { title: "Temperature in °C", type: "number" },
} as const;

const tableOf = (figures: readonly ConductorFigure[]): ValueDefinition => ({
  unit: "Ohm/km",
  table: {
    policy: "unique",
    inputs: ["asset.csa"],
    rules: figures.map(({ csa, perKm }) => row([csa], perKm)),
  },
});
const joints: ValueDefinition = { unit: "Ohm", const: 0.1 };
const metre = (figures: readonly ConductorFigure[]) => ({
  particulars,
  values: {
    joints,
    per_km: tableOf(figures),
    length_km: { unit: "km", formula: "asset.length / 1000.0 * metre_per_metre" },
  },
});

describe.each([
  ["class 5, plain copper", CLASS_5_PLAIN],
  ["class 5, tinned copper", CLASS_5_TINNED],
  ["classes 1 and 2, plain copper", CLASS_2_PLAIN],
])("IEC 60228, %s", (_, figures) => {
  const perMetre: ValueDefinition = {
    unit: "Ohm/m",
    table: {
      policy: "unique",
      inputs: ["asset.csa"],
      rules: figures.map(({ csa, perKm }) => row([csa], convert(perKm, "Ohm/km", "Ohm/m") ?? -1)),
    },
  };
  const parts = { particulars, values: { per_m: perMetre } };

  test.each(figures.map((figure) => [figure.id, figure.csa, figure.perKm] as const))(
    "%s: a kilometre of %d mm² has at most %d Ohm",
    (_id, csa, perKm) => {
      expectEdge({
        unit: "Ohm",
        bound: perKm,
        step: 0.01,
        limit: { max: "asset.length * per_m" },
        parts,
        particulars: { length: 1000, csa },
      });
    },
  );

  test("a size that the standard does not have is never interpolated", () => {
    const limits = [{ max: "asset.length * per_m" }];
    const given = { length: 1000, csa: LEGACY.csa };
    const judged = judgeReading(LEGACY.perKm, "Ohm", limits, parts, given);
    expect([judged.verdict, judged.why.code, judged.bound]).toEqual(["undecided", "no-rule", null]);
  });
});
