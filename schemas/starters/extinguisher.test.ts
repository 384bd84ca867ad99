import { proveStarter } from "../testing/starters/prove.ts";
import { practice, published, type Sheet, type Step } from "../testing/starters/starter-case.ts";
import { EXTINGUISHER } from "./extinguisher.ts";

const kg = (value: number) => ({ value, unit: "kg" });
const LOOKED = ["place", "sign", "instructions", "pin", "hose", "body"];
const COMMON = {
  ...Object.fromEntries(LOOKED.map((name) => [name, "ok"] as const)),
  next_service: "2027-03-01",
  extended: "2024-03-01",
  made: "2019-12-31",
};
const TODAY = "2026-11-25";
const SHEETS: Readonly<Record<string, Sheet>> = {
  foam: {
    particulars: { agent: "foam", full_weight: 9.2, charge: 6 },
    answers: { ...COMMON, gauge: "green" },
    on: TODAY,
  },
  CO2: {
    particulars: { agent: "CO2", full_weight: 14.5, charge: 5 },
    answers: { ...COMMON, weight: kg(14.4) },
    on: TODAY,
  },
};
const step = (sheet: string, point: string, tries: Step["tries"]): Step => ({
  sheet,
  point,
  tries,
});

proveStarter({
  starter: EXTINGUISHER,
  sheets: SHEETS,
  steps: [
    ...LOOKED.map((point) => step("foam", point, [["not-ok", "fail"]])),
    step("foam", "gauge", [
      ["low", "fail"],
      ["high", "fail"],
    ]),
    step("CO2", "weight", [
      [kg(14.1), "pass"],
      [kg(14), "pass"],
      [kg(13.9), "fail"],
      [{ value: 14000, unit: "g" }, "pass"],
    ]),
    step("foam", "next_service", [
      ["2026-11-26", "pass"],
      [TODAY, "pass"],
      ["2026-11-24", "fail"],
    ]),
    step("foam", "extended", [
      ["2021-11-26", "pass"],
      ["2021-11-25", "pass"],
      ["2021-11-24", "fail"],
      [TODAY, "pass"],
      ["2026-11-26", "fail"],
    ]),
    step("CO2", "extended", [
      ["2021-11-24", "pass"],
      ["2016-11-25", "pass"],
      ["2016-11-24", "fail"],
    ]),
    step("foam", "made", [
      ["2006-11-26", "pass"],
      ["2006-11-25", "pass"],
      ["2006-11-24", "fail"],
      [TODAY, "pass"],
      ["2026-11-26", "fail"],
    ]),
  ],
  numbers: {
    "/values/lost/const": practice("a tenth of the charge"),
    "/properties/extended/limits/0/notBefore/minus#5": published("ot-003", 5),
    "/properties/extended/limits/1/notBefore/minus#10": practice("10 years for CO2"),
    "/properties/made/limits/0/notBefore/minus#20": published("ot-004", 20),
  },
});
