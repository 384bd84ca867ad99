import { expect, test } from "vitest";
import { createFormulaEngine } from "../formulas/index.ts";
import { compileJudge } from "../judge/compile-judge.ts";
import { amount, broken } from "../testing/starters/electrical.ts";
import { proveStarter } from "../testing/starters/prove.ts";
import { memory, published, type Sheet } from "../testing/starters/starter-case.ts";
import { LIFTING_ACCESSORY } from "./lifting-accessory.ts";

const ON = "2026-08-31";
const COMMON = {
  load_mark: "ok",
  colour: "ok",
  examined: "2026-06-01",
  bent: "ok",
  fittings: "ok",
  clean: "ok",
} as const;
const mm = amount("mm");
const asset = (kind: string) => ({ kind, diameter: 10, working_load: 2000, colour_code: true });
const SHEETS: Readonly<Record<string, Sheet>> = {
  chain: {
    on: ON,
    particulars: asset("chain sling"),
    answers: { ...COMMON, links: "ok", link_diameter: mm(9.8) },
  },
  rope: {
    on: ON,
    particulars: asset("wire rope sling"),
    answers: {
      ...COMMON,
      rope_shape: "ok",
      broken_wires_short: 0,
      broken_wires_long: 1,
      rope_diameter: mm(9.9),
    },
  },
  textile: {
    on: ON,
    particulars: asset("textile sling"),
    answers: { ...COMMON, cuts: "ok", burns: "ok", stitching: "ok" },
  },
  shackle: {
    on: ON,
    particulars: asset("shackle"),
    answers: { ...COMMON, pin: "ok", body_diameter: mm(9.9) },
  },
};
const worn = (sheet: string, point: string) => ({
  sheet,
  point,
  tries: [
    [mm(9.1), "pass"],
    [mm(9), "pass"],
    [mm(8.9), "fail"],
  ] as const,
});
const ROPE = memory("EN 13414-2, discard criteria");

proveStarter({
  starter: LIFTING_ACCESSORY,
  sheets: SHEETS,
  steps: [
    ...broken("chain", "load_mark", "colour", "bent", "fittings", "clean", "links"),
    ...broken("rope", "rope_shape"),
    ...broken("textile", "cuts", "burns", "stitching"),
    ...broken("shackle", "pin"),
    worn("chain", "link_diameter"),
    worn("rope", "rope_diameter"),
    worn("shackle", "body_diameter"),
    {
      // Six months before 31 August is 28 February.
      sheet: "chain",
      point: "examined",
      tries: [
        ["2026-03-01", "pass"],
        ["2026-02-28", "pass"],
        ["2026-02-27", "fail"],
        ["2026-08-30", "pass"],
        ["2026-08-31", "pass"],
        ["2026-09-01", "fail"],
        [{ absent: { reason: "not-checked" } }, "undecided"],
      ],
    },
    {
      sheet: "rope",
      point: "broken_wires_short",
      tries: [
        [5, "pass"],
        [6, "pass"],
        [7, "fail"],
      ],
    },
    {
      sheet: "rope",
      point: "broken_wires_long",
      tries: [
        [13, "pass"],
        [14, "pass"],
        [15, "fail"],
      ],
    },
  ],
  numbers: {
    "/values/least_diameter/formula#0.9": memory("EN 818-6: mean diameter of a worn link"),
    "/properties/examined/limits/0/notBefore/minus#6": published("ot-026", 6),
    "/properties/broken_wires_short/limits/0/max": ROPE,
    "/properties/broken_wires_long/limits/0/max": ROPE,
  },
});

const judge = compileJudge(LIFTING_ACCESSORY.checklist, createFormulaEngine());

test("each kind is asked for its own points only, and an unknown kind never passes", () => {
  const asked = (kind: string) =>
    Object.entries(judge.judge({ on: ON, particulars: asset(kind), answers: COMMON }).points)
      .filter(([name, point]) => point.asked && !(name in COMMON))
      .map(([name]) => name);
  expect(asked("textile sling")).toEqual(["cuts", "burns", "stitching"]);
  expect(asked("shackle")).toEqual(["pin", "body_diameter"]);
  const { kind: _, ...rest } = asset("shackle");
  expect(judge.judge({ on: ON, particulars: rest, answers: COMMON }).overall).toBe("undecided");
});

test("without the day of the inspection no examination is in date", () => {
  const { on: _, ...sheet } = SHEETS.chain ?? { particulars: {}, answers: {} };
  expect(judge.judge(sheet).points.examined?.verdict).toBe("undecided");
});
