import { checklist, look } from "./parts.ts";

const BASIS = "The maker's instructions and common practice for ladders";

export const LADDER = checklist({
  title: "Ladder: formal inspection",
  minutes: 5,
  cautions: [
    "Look before climbing. No load test. A damaged ladder is tagged and taken out of use.",
  ],
  particulars: {
    kind: { title: "Kind", type: "string", enum: ["extension", "step", "platform"] },
    reach: { title: "Length", type: "number", unit: "m", minimum: 0.5, maximum: 12 },
  },
  groups: [
    {
      id: "look",
      title: "Look",
      points: ["stiles", "rungs", "feet", "joints", "locks", "label"],
      groupAnswer: true,
    },
    { id: "sum", title: "In all", points: ["condition", "remarks"] },
  ],
  properties: {
    stiles: look("Stiles straight, without cracks or dents?", BASIS, "danger-now"),
    rungs: look("Rungs or treads tight and clean?", BASIS, "danger-now"),
    feet: look("Feet all there and not worn?", BASIS, "by-a-date", "P14D"),
    joints: look("Rivets, screws and hinges tight?", BASIS, "by-a-date", "P14D"),
    locks: {
      ...look("Stays, hooks or locks work?", BASIS, "danger-now"),
      ask: {
        when: "asset.kind == 'extension' || asset.kind == 'step'",
        mandatory: true,
        absentAllowed: ["not-applicable"],
      },
    },
    label: look("Number and load label can be read?", BASIS, "observation"),
    condition: {
      $ref: "#/$defs/graded",
      title: "General condition, 1 poor to 5 as new",
      minimum: 1,
      maximum: 5,
      limits: [
        { min: 2, severity: "fail", basis: "Own practice: 1 is worn out" },
        { min: 3, severity: "advisory", basis: "Own practice: 2 is near its end" },
      ],
      ask: { mandatory: true },
      grade: { means: "by-a-date", within: "P28D" },
    },
    remarks: { $ref: "#/$defs/text", title: "Remarks", maxLength: 500 },
  },
});
