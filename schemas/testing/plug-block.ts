import { BLOCK_DIALECT, type Block } from "../checklist/block-schema.ts";

/** Points that checklists of anything with a mains plug share. All figures are invented. */
export const PLUG_BLOCK: Block = {
  dialect: BLOCK_DIALECT,
  name: "plug",
  title: "Plug",
  particulars: {
    rating: { title: "Rated current", type: "number", unit: "A", minimum: 1, maximum: 32 },
  },
  values: { fuse_most: { title: "Largest fuse", unit: "A", const: 13, basis: "Invented" } },
  points: {
    plug_case: {
      $ref: "#/$defs/check",
      title: "Plug whole?",
      limits: [{ accept: ["ok"], basis: "Invented" }],
    },
    fuse: {
      $ref: "#/$defs/reading",
      title: "Fuse fitted",
      quantity: { unit: "A" },
      limits: [{ min: 1, max: "fuse_most", basis: "Invented" }],
    },
    pin: {
      $ref: "#/$defs/reading",
      title: "Pin length",
      quantity: { unit: "mm" },
      limits: [{ min: 20, max: 23, basis: "Invented" }],
    },
  },
  groups: [
    { id: "pins", title: "Pins", points: ["pin"], repeat: { each: "Pin", count: 3 } },
    { id: "fuses", title: "Fuse", points: ["fuse"] },
  ],
  wording: {
    cy: {
      "/title": "Plwg",
      "/points/plug_case/title": "Plwg yn gyfan?",
      "/particulars/rating/title": "Cerrynt",
      "/groups/0/title": "Pinnau",
      "/groups/1/title": "Ffiws",
    },
  },
};
