import { CORD_PARTICULARS, CORD_VALUES, ELECTRICAL_CAUTIONS } from "./conductor.ts";
import { checklist, look, reading } from "./parts.ts";

const BY_LOOKING = "Damage found by looking is most of what is ever found; common practice";

export const PORTABLE_CLASS_I = checklist({
  title: "Portable appliance, class I: inspection and test",
  minutes: 8,
  cautions: ELECTRICAL_CAUTIONS,
  particulars: CORD_PARTICULARS,
  values: CORD_VALUES,
  groups: [
    { id: "look", title: "Look", points: ["cord", "plug", "casing", "guard"], groupAnswer: true },
    { id: "measure", title: "Measure", points: ["earth_continuity", "insulation"] },
    { id: "use", title: "Use", points: ["works"] },
  ],
  properties: {
    cord: look("Cord free of cuts and repairs?", BY_LOOKING, "danger-now"),
    plug: look("Plug whole, cord grip holds?", BY_LOOKING, "danger-now"),
    casing: look("Casing whole, no live part within reach?", BY_LOOKING, "danger-now"),
    guard: look("Guards and rests in place?", "The maker's instructions", "by-a-date", "P14D"),
    earth_continuity: reading({
      title: "Earth continuity, plug to casing",
      quantity: { unit: "Ohm", alsoIn: ["mOhm"], decimals: 3, plausible: { min: 0, max: 20 } },
      limits: [
        {
          max: "joints + asset.length * r_per_m",
          severity: "fail",
          basis: "0.1 Ohm plus the cord, IEC 60228 class 5 at 20 °C",
        },
        {
          max: "(joints + asset.length * r_per_m) * 0.9",
          severity: "advisory",
          basis: "Nine tenths of the limit: own practice, to see it coming",
        },
      ],
      ask: { mandatory: true, absentAllowed: ["not-applicable", "not-measurable"] },
      means: "danger-now",
    }),
    insulation: reading({
      title: "Insulation resistance",
      quantity: { unit: "MOhm", decimals: 2, plausible: { min: 0, max: 1000 } },
      limits: [
        { min: 1, severity: "fail", basis: "1 MOhm for class I equipment, common practice" },
      ],
      ask: { mandatory: true, absentAllowed: ["not-applicable", "not-measurable"] },
      means: "danger-now",
    }),
    works: look("Works as it should?", "The maker's instructions", "by-a-date", "P28D"),
  },
});
