import type { ParticularDefinitions, PointDefinition } from "../checklist/meta-schema.ts";
import {
  byDate,
  COMMON_PRACTICE,
  DANGER,
  draft,
  must,
  row,
  type Starter,
  sound,
} from "./starter.ts";

const particulars: ParticularDefinitions = {
  leaves: { title: "Leaves", type: "integer", enum: [1, 2] },
  smoke: { title: "Keeps out cold smoke", type: "boolean" },
  foot_seal: { title: "Flexible seal at the foot", type: "boolean" },
  self_closing: { title: "Self-closing", type: "boolean" },
  partly_open: { title: "Closer tested partly open at", enum: ["15 degrees", "75 mm"] },
  glazed: { title: "Glazed", type: "boolean" },
  gap_rule: { title: "Gaps judged by", enum: ["2 to 4 mm", "at most 3 mm", "certificate"] },
  certified_least: {
    title: "Least gap by its certificate",
    type: "number",
    unit: "mm",
    minimum: 0,
    maximum: 20,
  },
  certified_most: {
    title: "Largest gap by its certificate",
    type: "number",
    unit: "mm",
    minimum: 0,
    maximum: 20,
  },
  certified_foot: {
    title: "Largest gap at the foot by its certificate",
    type: "number",
    unit: "mm",
    minimum: 0,
    maximum: 40,
  },
};

const BS_8214 = "BS 8214:2016, 12.3";
const CERTIFICATE = "the door's certificate overrides it";
const GUIDANCE =
  "Home Office fire door guidance, Fire Safety (England) Regulations 2022, how to check";
const WEEK = byDate("P7D");

const gap = (title: string, more: Partial<PointDefinition> = {}): PointDefinition => ({
  title,
  description: "With a gauge, door shut: near each end and in the middle.",
  $ref: "#/$defs/readings",
  quantity: { unit: "mm", alsoIn: ["cm", "[in_i]"], decimals: 1, plausible: { min: 0, max: 30 } },
  several: { count: 3, combine: "each" },
  limits: [{ min: "gap_least", max: "gap_most", basis: `${BS_8214}; ${CERTIFICATE}` }],
  grade: byDate("P1M"),
  ask: must({ absentAllowed: ["not-measurable"] }),
  ...more,
});

const closes = (from: string, when: string, basis: string) =>
  sound(`Let go ${from}: does it close into the frame and latch?`, basis, {
    ask: must({ when }),
  });

export const FIRE_DOOR: Starter = {
  key: "fire-door",
  title: "Fire door",
  assetType: { name: "fire_door", title: "Fire door", particulars },
  checklist: draft({
    title: "Fire door: inspection",
    minutes: 8,
    particulars: { ...particulars },
    cautions: [
      "Do not wedge, plane or drill the door, and take nothing off it.",
      "A failed closer on an escape route is reported at once.",
      "Mind fingers at hinges and meeting edges; somebody may come through while you measure.",
    ],
    values: {
      least: { title: "Least gap", unit: "mm", const: 2, basis: BS_8214 },
      most: { title: "Largest gap", unit: "mm", const: 4, basis: BS_8214 },
      none: { title: "No least gap", unit: "mm", const: 0, basis: COMMON_PRACTICE },
      tight: { title: "Largest gap, tighter rule", unit: "mm", const: 3, basis: COMMON_PRACTICE },
      gap_least: {
        title: "Least gap of this door",
        unit: "mm",
        formula:
          "asset.gap_rule == 'certificate' ? asset.certified_least : asset.gap_rule == 'at most 3 mm' ? none : least",
      },
      gap_most: {
        title: "Largest gap of this door",
        unit: "mm",
        formula:
          "asset.gap_rule == 'certificate' ? asset.certified_most : asset.gap_rule == 'at most 3 mm' ? tight : most",
      },
      foot: {
        title: "Largest gap at the foot",
        unit: "mm",
        table: {
          policy: "unique",
          inputs: ["asset.smoke", "asset.foot_seal"],
          rules: [
            row([true, false], 3, `${BS_8214}: cold smoke, no seal`),
            row([true, true], 10, `${BS_8214}: flexible seal`),
            row([false, { any: true }], 10, `${BS_8214}: no cold smoke`),
          ],
        },
      },
      gap_foot: {
        title: "Largest gap at the foot of this door",
        unit: "mm",
        formula: "asset.gap_rule == 'certificate' ? asset.certified_foot : foot",
      },
    },
    groups: [
      {
        id: "doorway",
        title: "Doorway",
        points: ["open", "sign", "frame", "meeting_gap", "order"],
      },
      {
        id: "leaf",
        title: "Leaves",
        points: [
          "leaf",
          "hinges",
          "latch",
          "strips",
          "glass",
          "head_gap",
          "hinge_gap",
          "lock_gap",
          "foot_gap",
          "closes_fully",
          "closes_15",
          "closes_75",
        ],
        repeat: { each: "Leaf", count: "asset.leaves", atMost: 2 },
      },
    ],
    properties: {
      open: sound("Nothing wedges it open or stands in its way?", COMMON_PRACTICE),
      sign: sound("Its sign there and readable?", COMMON_PRACTICE, {
        grade: WEEK,
        ask: must({ absentAllowed: ["not-applicable"] }),
      }),
      frame: sound("Frame whole and fast in the wall, no gaps behind it?", COMMON_PRACTICE),
      meeting_gap: gap("Gap between the leaves", {
        ask: must({ when: "asset.leaves == 2.0", absentAllowed: ["not-measurable"] }),
      }),
      order: sound("Leaves close in the right order?", COMMON_PRACTICE, {
        ask: must({ when: "asset.leaves == 2.0", absentAllowed: ["not-applicable"] }),
      }),
      leaf: sound("Leaf whole: no holes, splits, sagging or added ironmongery?", COMMON_PRACTICE),
      hinges: sound("Hinges firm, all screws in, no metal dust or oil?", COMMON_PRACTICE),
      latch: sound("Lock and latch work, and hold it shut?", COMMON_PRACTICE),
      strips: sound(
        "Intumescent strips and smoke seals there, whole, unpainted, all round?",
        COMMON_PRACTICE,
      ),
      glass: sound("Glass and its beads whole and fast?", COMMON_PRACTICE, {
        ask: must({ when: "asset.glazed" }),
      }),
      head_gap: gap("Gap at the head"),
      hinge_gap: gap("Gap at the hinge side"),
      lock_gap: gap("Gap at the lock side"),
      foot_gap: {
        ...gap("Gap at the foot"),
        several: { count: 3, combine: "highest" },
        limits: [{ max: "gap_foot", basis: `${BS_8214}; ${CERTIFICATE}` }],
      },
      closes_fully: {
        ...closes("fully open", "asset.self_closing", GUIDANCE),
        grade: DANGER,
      },
      closes_15: closes(
        "at about 15 degrees",
        "asset.self_closing && asset.partly_open == '15 degrees'",
        GUIDANCE,
      ),
      closes_75: closes(
        "75 mm ajar",
        "asset.self_closing && asset.partly_open == '75 mm'",
        COMMON_PRACTICE,
      ),
    },
  }),
  interval: {
    title: "Fire door",
    rule: { kind: "from-last-done", every: "P3M", early: "P14D", late: "P0D" },
    basis:
      "Fire Safety (England) Regulations 2022, reg 10: communal doors where the top storey is above 11 m, at least every 3 months",
  },
  note: "Gaps leaf by leaf, the closer from two positions, strips, glass and hinges.",
};
