import type { ParticularDefinitions } from "../checklist/meta-schema.ts";
import { COMMON_PRACTICE, draft, measured, must, type Starter, sound } from "./starter.ts";

const particulars: ParticularDefinitions = {
  kind: { title: "Kind", enum: ["leaning ladder", "extension ladder", "stepladder"] },
  material: { title: "Material", enum: ["aluminium", "glass fibre", "timber"] },
};

const BEFORE_USE = "HSE INDG455 and Ladder Association LA455, check before use";
const ADVICE = "Danish Working Environment Authority advice on ladders";
const LEANING = must({
  when: "asset.kind != 'stepladder'",
  absentAllowed: ["not-applicable"],
});
const STEPLADDER = must({ when: "asset.kind == 'stepladder'" });

export const LADDER: Starter = {
  key: "ladder",
  title: "Ladder and stepladder",
  assetType: { name: "ladder", title: "Ladder", particulars },
  checklist: draft({
    title: "Ladder and stepladder: detailed visual inspection",
    minutes: 6,
    particulars: { ...particulars },
    cautions: [
      "Look at all of it lying down, before anyone climbs it. It is never tested with a load.",
      "Damaged means tagged and taken out of use at once: no repair on the spot.",
      "Keep clear of overhead lines when you set it up.",
    ],
    values: {
      angle: { title: "Angle to the ground", unit: "deg", const: 75, basis: ADVICE },
      either: { title: "Either side", unit: "deg", const: 1, basis: COMMON_PRACTICE },
    },
    groups: [
      {
        id: "looking",
        title: "Lying down",
        points: ["tag", "stiles", "rungs", "feet", "fittings", "clean", "bare"],
        groupAnswer: true,
      },
      { id: "extension", title: "Extension ladder", points: ["sections"] },
      { id: "stepladder", title: "Stepladder", points: ["locking_bars", "treads", "hinges"] },
      { id: "set_up", title: "Set up", points: ["stands", "angle_to_ground", "above_landing"] },
    ],
    properties: {
      tag: sound("Number and tag readable, not marked out of use?", COMMON_PRACTICE),
      stiles: sound("Stiles straight, no crack, dent or split?", COMMON_PRACTICE),
      rungs: sound("No rung or step bent, missing or loose?", BEFORE_USE),
      feet: sound("Feet there, clean and not worn?", BEFORE_USE),
      fittings: sound("Rivets, screws and welds all there and tight?", COMMON_PRACTICE),
      clean: sound("Free of grease, mud and wet paint?", COMMON_PRACTICE, {
        grade: { means: "observation" },
      }),
      bare: sound("Timber not painted over, so that cracks show?", COMMON_PRACTICE, {
        ask: must({ when: "asset.material == 'timber'" }),
      }),
      sections: sound("Guides, hooks, catches and rope whole and working?", BEFORE_USE, {
        ask: must({ when: "asset.kind == 'extension ladder'" }),
      }),
      locking_bars: sound("Locking bars straight, and lock?", BEFORE_USE, { ask: STEPLADDER }),
      treads: sound("Treads and platform clean, firm and level?", BEFORE_USE, {
        ask: STEPLADDER,
      }),
      hinges: sound("Hinges and their fixings whole?", COMMON_PRACTICE, { ask: STEPLADDER }),
      stands: sound(
        "Set up on firm ground, stands on all its feet; a foot on the lowest rung: nothing gives?",
        COMMON_PRACTICE,
      ),
      angle_to_ground: measured(
        "Angle to the ground",
        { unit: "deg", alsoIn: ["rad"], decimals: 0, plausible: { min: 30, max: 90 } },
        [
          {
            min: "angle - either",
            max: "angle + either",
            basis: `${ADVICE}: 75 degrees, about 1 out for 4 up; the degree either side is common practice`,
          },
        ],
        { description: "Where it stands set up for use.", ask: LEANING },
      ),
      above_landing: measured(
        "Length above the landing it leads to",
        { unit: "m", alsoIn: ["cm"], decimals: 2, plausible: { min: 0, max: 6 } },
        [{ min: 1, basis: `${ADVICE}, and HSE INDG455: at least 1 m above the landing` }],
        { description: "Where it stands set up for access.", ask: LEANING },
      ),
    },
    stops: [
      {
        after: [
          "stiles",
          "rungs",
          "feet",
          "fittings",
          "bare",
          "sections",
          "locking_bars",
          "treads",
          "hinges",
        ],
        on: ["fail"],
        groups: ["set_up"],
        say: "Damaged: do not set it up or climb it. Tag it and take it out of use.",
      },
    ],
  }),
  interval: {
    title: "Ladder, detailed inspection",
    rule: { kind: "from-last-done", every: "P6M", early: "P14D", late: "P14D" },
    basis: `Work at Height Regulations 2005, reg 12: at suitable intervals; 3 or 6 months. ${COMMON_PRACTICE}`,
  },
  note: "Stiles, rungs, feet and locks, looked at lying down before anyone climbs.",
};
