import { CORD_PARTICULARS, CORD_VALUES, ELECTRICAL_CAUTIONS } from "./conductor.ts";
import { checklist, look, reading } from "./parts.ts";

const BY_LOOKING = "Damage found by looking is most of what is ever found; common practice";

export const EXTENSION_LEAD = checklist({
  title: "Extension lead: inspection and test",
  minutes: 6,
  cautions: ELECTRICAL_CAUTIONS,
  particulars: {
    ...CORD_PARTICULARS,
    class: { title: "Protection class", type: "string", enum: ["I", "II"] },
  },
  values: CORD_VALUES,
  groups: [
    { id: "look", title: "Look", points: ["cable", "plug", "label"], groupAnswer: true },
    { id: "measure", title: "Measure", points: ["insulation", "earth_continuity", "polarity"] },
  ],
  properties: {
    cable: {
      ...look("Cable free of cuts, repairs and heat marks?", BY_LOOKING, "danger-now"),
      ask: { mandatory: true, evidence: [{ kind: "photo", on: ["fail"], atLeast: 1 }] },
    },
    plug: look("Plug and connector whole, grips hold?", BY_LOOKING, "danger-now"),
    label: look("Number can be read?", "Own practice", "observation"),
    insulation: reading({
      title: "Insulation resistance",
      quantity: { unit: "MOhm", decimals: 2, plausible: { min: 0, max: 1000 } },
      limits: [
        { min: 1, severity: "fail", basis: "1 MOhm for class I equipment, common practice" },
      ],
      ask: { mandatory: true, absentAllowed: ["not-applicable", "not-measurable"] },
      means: "danger-now",
    }),
    earth_continuity: reading({
      title: "Earth continuity",
      quantity: { unit: "Ohm", alsoIn: ["mOhm"], decimals: 3, plausible: { min: 0, max: 20 } },
      limits: [
        {
          max: "joints + asset.length * r_per_m",
          severity: "fail",
          basis: "0.1 Ohm for joints plus the conductor, IEC 60228 class 5 at 20 °C",
        },
        {
          max: "(joints + asset.length * r_per_m) * 0.9",
          severity: "advisory",
          basis: "Nine tenths of the limit: own practice, to see it coming",
        },
      ],
      ask: {
        when: "asset.class == 'I'",
        mandatory: true,
        absentAllowed: ["not-applicable", "not-measurable"],
      },
      means: "danger-now",
    }),
    polarity: look("Polarity right?", "Common practice", "danger-now"),
  },
});
