import { amp, broken, FUSE_NUMBERS, megohm, milliamp } from "../testing/starters/electrical.ts";
import { proveStarter } from "../testing/starters/prove.ts";
import { published, type Sheet } from "../testing/starters/starter-case.ts";
import { PORTABLE_CLASS_2 } from "./portable-class-2.ts";

const LOOKS = {
  enclosure: "ok",
  flex: "ok",
  plug: "ok",
  suited: "ok",
  marks: "ok",
  double_square: "ok",
} as const;
const TESTED = {
  ...LOOKS,
  fuse: amp(3),
  insulation_voltage: "500",
  insulation: { value: 200, unit: "MOhm", comparator: ">" },
  touch_current: milliamp(0.05),
  works: "ok",
} as const;
const SANDER = { rated_power: 0.3, csa: 1, fused_plug: true, surge_protected: false };
const SHEETS: Readonly<Record<string, Sheet>> = {
  sander: { particulars: SANDER, answers: TESTED },
  "large saw": { particulars: { ...SANDER, rated_power: 1.8 }, answers: TESTED },
  electronic: {
    particulars: { ...SANDER, surge_protected: true },
    answers: { ...TESTED, insulation_voltage: "250" },
  },
};

proveStarter({
  starter: PORTABLE_CLASS_2,
  sheets: SHEETS,
  steps: [
    ...broken("sander", ...Object.keys(LOOKS), "works"),
    {
      sheet: "sander",
      point: "fuse",
      tries: [
        [amp(3), "pass"],
        [amp(4), "fail"],
      ],
    },
    {
      // 1 mm² carries 10 A, and the load allows 13 A.
      sheet: "large saw",
      point: "fuse",
      tries: [
        [amp(10), "pass"],
        [amp(11), "advisory"],
        [amp(13), "advisory"],
        [amp(14), "fail"],
      ],
    },
    { sheet: "sander", point: "insulation_voltage", tries: [["250", "fail"]] },
    { sheet: "electronic", point: "insulation_voltage", tries: [["500", "advisory"]] },
    {
      sheet: "sander",
      point: "insulation",
      tries: [
        [megohm(2.01), "pass"],
        [megohm(2), "pass"],
        [megohm(1.99), "fail"],
      ],
    },
    {
      sheet: "sander",
      point: "touch_current",
      tries: [
        [milliamp(0.24), "pass"],
        [{ value: 250, unit: "uA" }, "pass"],
        [milliamp(0.26), "fail"],
      ],
    },
  ],
  numbers: {
    ...FUSE_NUMBERS,
    "/properties/insulation/limits/0/min": published("el-066", 2),
    "/properties/touch_current/limits/0/max": published("el-075", 0.25),
  },
});
