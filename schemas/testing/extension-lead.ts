import type { Checklist } from "../checklist/meta-schema.ts";
import { rule } from "./rule.ts";

/**
 * Extension lead, as a draft without `$defs`. Conductor resistances per metre are the maximum at
 * 20 °C of IEC 60228 class 5 (flexible, plain copper): 26.0, 19.5, 13.3 and 7.98 mΩ/m. The
 * 0.1 Ω for joints is common practice without a published source.
 */
export const EXTENSION_LEAD: Checklist = {
  $schema: "https://json-schema.org/draft/2020-12/schema",
  dialect: "urn:roundbook:checklist:1",
  title: "Extension lead: inspection and test",
  type: "object",
  particulars: {
    length: { title: "Length", type: "number", unit: "m", minimum: 0.5, maximum: 100 },
    csa: {
      title: "Conductor cross-section",
      type: "number",
      unit: "mm2",
      enum: [0.75, 1, 1.5, 2.5],
    },
    class: { title: "Protection class", enum: ["I", "II"] },
  },
  values: {
    joints: { title: "Allowance for joints", unit: "Ohm", const: 0.1 },
    r_per_m: {
      title: "Conductor resistance per metre",
      unit: "Ohm/m",
      table: {
        policy: "unique",
        inputs: ["asset.csa"],
        rules: [rule([0.75], 0.026), rule([1], 0.0195), rule([1.5], 0.0133), rule([2.5], 0.00798)],
      },
    },
  },
  properties: {
    cable: {
      title: "Cable and plug free of damage?",
      $ref: "#/$defs/check",
      limits: [{ accept: ["ok"], basis: "Damage stops the test" }],
      ask: { mandatory: true, evidence: [{ kind: "photo", on: ["fail"], atLeast: 1 }] },
    },
    earth_continuity: {
      title: "Earth continuity",
      $ref: "#/$defs/reading",
      quantity: {
        unit: "Ohm",
        alsoIn: ["mOhm"],
        decimals: 3,
        plausible: { min: 0, max: 20 },
      },
      limits: [
        {
          max: "joints + asset.length * r_per_m",
          basis: "0.1 Ohm plus the conductor, IEC 60228 class 5 at 20 °C",
        },
      ],
      ask: {
        when: "asset.class == 'I'",
        mandatory: true,
        absentAllowed: ["not-applicable", "not-measurable"],
      },
    },
  },
  additionalProperties: false,
};
