import type { ParticularDefinitions, PointDefinition } from "../checklist/meta-schema.ts";
import {
  byDate,
  COMMON_PRACTICE,
  DANGER,
  draft,
  measured,
  must,
  type Starter,
  sound,
} from "./starter.ts";

const particulars: ParticularDefinitions = {
  agent: { title: "Agent", enum: ["water", "foam", "powder", "wet chemical", "CO2"] },
  full_weight: {
    title: "Weight when full, as marked",
    type: "number",
    unit: "kg",
    minimum: 0.5,
    maximum: 200,
  },
  charge: { title: "Weight of the charge", type: "number", unit: "kg", minimum: 0.5, maximum: 150 },
};

const OVERVIEW = "BS 5306-3, maintenance overview";
const GAS = "asset.agent == 'CO2'";

const dated = (
  title: string,
  limits: NonNullable<PointDefinition["limits"]>,
  more: Partial<PointDefinition> = {},
): PointDefinition => ({
  title,
  $ref: "#/$defs/date",
  limits,
  grade: byDate("P1M"),
  ask: must({ evidence: [], absentAllowed: ["not-measurable"] }),
  ...more,
});

export const EXTINGUISHER: Starter = {
  key: "extinguisher",
  title: "Fire extinguisher, user check",
  assetType: { name: "extinguisher", title: "Fire extinguisher", particulars },
  checklist: draft({
    title: "Fire extinguisher: user check",
    minutes: 3,
    particulars: { ...particulars },
    cautions: [
      "Do not discharge, open or refill it: service belongs to a competent person.",
      "A damaged or corroded cylinder under pressure can burst: leave it, keep others away, report it.",
      "Lift it with both hands, and put it back in its place before the next.",
    ],
    values: {
      lost: {
        title: "Part of the charge it may lose",
        unit: "1",
        const: 0.1,
        basis: COMMON_PRACTICE,
      },
      least_weight: {
        title: "Least weight",
        unit: "kg",
        formula: "asset.full_weight - lost * asset.charge",
      },
    },
    groups: [
      {
        id: "look",
        title: "In its place",
        points: ["place", "sign", "instructions", "pin", "hose", "body"],
        groupAnswer: true,
      },
      { id: "charge", title: "Charge", points: ["gauge", "weight"] },
      { id: "dates", title: "Dates on its label", points: ["next_service", "extended", "made"] },
    ],
    properties: {
      place: sound("In its place, reached without moving anything?", COMMON_PRACTICE),
      sign: sound("Its sign there and readable?", COMMON_PRACTICE, { grade: byDate("P7D") }),
      instructions: sound("Instructions readable, facing out?", COMMON_PRACTICE, {
        grade: byDate("P7D"),
      }),
      pin: sound("Pin in, seal unbroken?", COMMON_PRACTICE),
      hose: sound("Hose and horn whole and clear?", COMMON_PRACTICE, {
        ask: must({ absentAllowed: ["not-applicable"] }),
      }),
      body: sound("Body without dents, rust or leak?", COMMON_PRACTICE),
      gauge: {
        title: "Pressure gauge",
        $ref: "#/$defs/choice",
        oneOf: [
          { const: "green", title: "In the green" },
          { const: "low", title: "Below the green" },
          { const: "high", title: "Above the green" },
          { $ref: "#/$defs/absent" },
        ],
        limits: [{ accept: ["green"], basis: COMMON_PRACTICE }],
        grade: DANGER,
        ask: must({ when: "asset.agent != 'CO2'", absentAllowed: ["not-applicable"] }),
      },
      weight: measured(
        "Weight",
        { unit: "kg", alsoIn: ["g", "[lb_av]"], decimals: 1, plausible: { min: 0, max: 250 } },
        [
          {
            min: "least_weight",
            basis: `Lost more than a tenth of its charge. ${COMMON_PRACTICE}`,
          },
        ],
        { ask: must({ when: GAS }) },
      ),
      next_service: dated(
        "Next service due",
        [{ notBefore: { from: "today" }, basis: `${OVERVIEW}: basic service every 12 months` }],
        { grade: byDate("P14D") },
      ),
      extended: dated("Last extended service, else day it was put into use", [
        {
          notBefore: { from: "today", minus: "P5Y" },
          when: "asset.agent != 'CO2'",
          basis: `${OVERVIEW}: extended service every 5 years`,
        },
        {
          notBefore: { from: "today", minus: "P10Y" },
          when: GAS,
          basis: `CO2: overhaul every 10 years. ${COMMON_PRACTICE}`,
        },
        { notAfter: { from: "today" }, basis: "A service lies behind us" },
      ]),
      made: dated(
        "Year it was made, as a date",
        [
          {
            notBefore: { from: "today", minus: "P20Y" },
            basis: `${OVERVIEW}: replaced after 20 years at the latest`,
          },
          { notAfter: { from: "today" }, basis: "A date still to come was misread" },
        ],
        { description: "31 December where only the year stands on it, and not later than today." },
      ),
    },
  }),
  interval: {
    title: "Extinguisher, user check",
    rule: { kind: "from-last-done", every: "P1M", early: "P7D", late: "P7D" },
    basis: `${OVERVIEW}: looked at by the responsible person monthly`,
  },
  note: "In place, pin and seal, pressure or weight, and the dates on its label.",
};
