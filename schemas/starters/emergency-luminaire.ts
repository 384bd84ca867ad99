import type { ParticularDefinitions, PointDefinition } from "../checklist/meta-schema.ts";
import { byDate, COMMON_PRACTICE, DANGER, draft, must, type Starter, sound } from "./starter.ts";

const particulars: ParticularDefinitions = {
  rated_duration: { title: "Rated duration", type: "number", unit: "h", enum: [1, 2, 3] },
  exit_sign: { title: "Exit sign", type: "boolean" },
};
const assetType = { name: "emergency_luminaire", title: "Emergency luminaire", particulars };

const ROUTINE = "EN 50172 and BS 5266-8, routine tests";
const CAUTIONS = [
  "The test cuts normal lighting: choose a time when nobody needs it, and light your own way.",
  "After a full discharge the place is without emergency light until it is charged: test by daylight, or neighbours in turn.",
  "Work at height: from the ground where the test switch allows; opened luminaires belong to qualified people.",
];

const LOOK: Readonly<Record<string, PointDefinition>> = {
  whole: sound("Luminaire whole, fixed and clean, nothing hides it?", COMMON_PRACTICE, {
    grade: byDate("P7D"),
  }),
  charging: sound("Does its indicator show that it charges?", ROUTINE, { grade: byDate("P7D") }),
  sign: sound("Sign right for the way out, and readable?", COMMON_PRACTICE, {
    grade: byDate("P7D"),
    ask: must({ when: "asset.exit_sign" }),
  }),
};

export const EMERGENCY_LUMINAIRE: Starter = {
  key: "emergency-luminaire",
  title: "Emergency luminaire, function test",
  assetType,
  checklist: draft({
    title: "Emergency luminaire: function test",
    minutes: 2,
    particulars: { ...particulars },
    cautions: CAUTIONS,
    groups: [
      { id: "look", title: "Look", points: ["whole", "charging", "sign"], groupAnswer: true },
      { id: "switching", title: "Supply off, and on again", points: ["lights", "back"] },
    ],
    properties: {
      ...LOOK,
      lights: sound("Supply off: does it light, and stay lit while you look?", ROUTINE),
      back: sound("Supply on again: does it go back to charging?", ROUTINE),
    },
  }),
  interval: {
    title: "Emergency luminaire, function test",
    rule: { kind: "from-last-done", every: "P1M", early: "P7D", late: "P7D" },
    basis: `${ROUTINE}: function test of each luminaire once a month`,
  },
  note: "The monthly test: it lights when the supply goes, and charges again.",
};

export const EMERGENCY_LUMINAIRE_DURATION: Starter = {
  key: "emergency-luminaire-duration",
  title: "Emergency luminaire, full duration",
  assetType,
  checklist: draft({
    title: "Emergency luminaire: full rated duration",
    minutes: 15,
    particulars: { ...particulars },
    cautions: CAUTIONS,
    groups: [
      { id: "look", title: "Look", points: ["whole", "charging", "sign"], groupAnswer: true },
      {
        id: "switching",
        title: "Supply off, and on again",
        points: ["lights", "duration", "back", "battery"],
      },
    ],
    properties: {
      ...LOOK,
      lights: sound("Supply off: does it light?", ROUTINE),
      duration: {
        title: "How long it stayed lit",
        description: "Longer than you watched: write it as more than.",
        $ref: "#/$defs/reading",
        quantity: {
          unit: "min",
          alsoIn: ["h"],
          decimals: 0,
          plausible: { min: 0, max: 480 },
        },
        limits: [
          {
            min: "asset.rated_duration",
            basis: `${ROUTINE}: full rated duration once a year`,
          },
        ],
        grade: DANGER,
        ask: must(),
      },
      back: sound("Supply on again: does it go back to charging?", ROUTINE),
      battery: {
        title: "Date on its battery",
        $ref: "#/$defs/date",
        limits: [
          {
            notBefore: { from: "today", minus: "P4Y" },
            severity: "advisory",
            basis: `Batteries are made for about 4 years. ${COMMON_PRACTICE}`,
          },
          { notAfter: { from: "today" }, basis: "A date still to come was misread" },
        ],
        grade: { means: "observation" },
        ask: must({ evidence: [], absentAllowed: ["not-measurable", "no-access"] }),
      },
    },
    stops: [
      {
        after: ["lights"],
        on: ["fail"],
        points: ["duration"],
        say: "It does not light at all: there is no duration to take. Report it at once.",
      },
    ],
  }),
  interval: {
    title: "Emergency luminaire, full duration",
    rule: { kind: "from-last-done", every: "P1Y", early: "P1M", late: "P14D" },
    basis: `${ROUTINE}: full rated duration once a year`,
  },
  note: "The yearly test: it stays lit for its rated duration of 1, 2 or 3 hours.",
};
