import { checklist, look, reading } from "./parts.ts";

const GAP_BASIS = "2 to 4 mm at head and sides, BS 8214 as commonly quoted";
const BASIS = "The door maker's instructions and common practice";

const gap = (title: string) =>
  reading({
    title,
    quantity: { unit: "mm", decimals: 1, plausible: { min: 0, max: 30 } },
    limits: [{ min: 2, max: 4, severity: "fail", basis: GAP_BASIS }],
    ask: { mandatory: true, absentAllowed: ["not-measurable"] },
    means: "by-a-date",
    within: "P14D",
  });

export const FIRE_DOOR = checklist({
  title: "Fire door: gaps, closer and seals",
  minutes: 7,
  cautions: [
    "Do not wedge, plane or drill the door.",
    "A failed closer on an escape route is reported at once.",
  ],
  particulars: {
    rating: { title: "Fire resistance", type: "integer", unit: "min", enum: [30, 60] },
    glazed: { title: "Has glass", type: "boolean" },
  },
  groups: [
    { id: "gaps", title: "Gaps", points: ["gap_head", "gap_hinge", "gap_lock"] },
    { id: "work", title: "Working", points: ["closing", "latch"] },
    { id: "look", title: "Look", points: ["seals", "glass", "leaf", "sign"], groupAnswer: true },
  ],
  properties: {
    gap_head: gap("Gap at the head, widest"),
    gap_hinge: gap("Gap at the hinge side, widest"),
    gap_lock: gap("Gap at the lock side, widest"),
    closing: {
      $ref: "#/$defs/choice",
      title: "Let go half open: what does the door do?",
      oneOf: [
        { const: "closes", title: "Closes and latches" },
        { const: "slow", title: "Closes slowly, latches" },
        { const: "ajar", title: "Stays ajar" },
        { $ref: "#/$defs/absent" },
      ],
      limits: [
        { accept: ["closes", "slow"], severity: "fail", basis: BASIS },
        { accept: ["closes"], severity: "advisory", basis: BASIS },
      ],
      ask: { mandatory: true, absentAllowed: ["no-access"] },
      grade: { means: "danger-now" },
    },
    latch: look("Latch holds the door?", BASIS, "danger-now"),
    seals: look("Seals all round, whole and not painted over?", BASIS, "by-a-date", "P14D"),
    glass: {
      ...look("Glass whole, beads tight?", BASIS, "by-a-date", "P14D"),
      ask: { when: "asset.glazed", mandatory: true },
    },
    leaf: look("Leaf and frame without holes or damage?", BASIS, "by-a-date", "P28D"),
    sign: look("Sign there?", "Own practice", "observation"),
  },
});
