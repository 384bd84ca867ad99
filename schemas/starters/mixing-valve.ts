import type { ParticularDefinitions } from "../checklist/meta-schema.ts";
import {
  byDate,
  COMMON_PRACTICE,
  draft,
  measured,
  must,
  row,
  type Starter,
  sound,
} from "./starter.ts";

const particulars: ParticularDefinitions = {
  outlet: {
    title: "Outlet",
    enum: ["bidet", "shower", "washbasin", "bath", "bath, exceptional"],
  },
  premises: { title: "Premises", enum: ["health care", "new dwelling", "school or public"] },
  strainers: { title: "Has strainers", type: "boolean" },
  fail_safe: { title: "Shuts off when the cold supply fails", type: "boolean" },
};

const TABLE_1 = "HSE, Hot and cold water systems, table 1";
const GUIDANCE_NOTE = "NHS Estates Health Guidance Note (1998)";
const PART_G = "Building Regulations, part G3, as a textbook quotes it";
const ANY = { any: true } as const;
const BLENDED = {
  unit: "Cel",
  alsoIn: ["[degF]"],
  decimals: 1,
  plausible: { min: 15, max: 75 },
};

export const MIXING_VALVE: Starter = {
  key: "mixing-valve",
  title: "Thermostatic mixing valve",
  assetType: { name: "mixing_valve", title: "Mixing valve", particulars },
  checklist: draft({
    title: "Thermostatic mixing valve: in-service test",
    minutes: 12,
    particulars: { ...particulars },
    cautions: [
      "Use the probe, never the hand or skin: during the shut-off test hot water may come.",
      "Nobody uses the outlet until the test is over and the supplies are open again.",
      "Avoid spray. Setting the valve is for who is trained on that make.",
    ],
    values: {
      hottest: {
        title: "Hottest mixed water",
        unit: "Cel",
        table: {
          policy: "unique",
          inputs: ["asset.outlet", "asset.premises"],
          rules: [
            row(["bidet", ANY], 38, GUIDANCE_NOTE),
            row(["shower", ANY], 41, GUIDANCE_NOTE),
            row(["washbasin", ANY], 41, `${GUIDANCE_NOTE} (confirm the figure there)`),
            row(["bath", "health care"], 44, GUIDANCE_NOTE),
            row(["bath", "new dwelling"], 48, PART_G),
            row(["bath", "school or public"], 43, "Schools, hospitals and care, a textbook"),
            row(["bath, exceptional", ANY], 46, GUIDANCE_NOTE),
          ],
        },
      },
    },
    groups: [
      { id: "look", title: "Look", points: ["tight", "strainer"] },
      { id: "supplies", title: "Supplies", points: ["hot_supply", "cold_supply"] },
      { id: "mixing", title: "Mixed water", points: ["blend"] },
      { id: "failing", title: "Cold supply shut", points: ["shut_off", "restored"] },
    ],
    properties: {
      tight: sound("Valve and outlet without leak, damage or scale?", COMMON_PRACTICE),
      strainer: sound("Strainers cleaned and put back?", COMMON_PRACTICE, {
        grade: byDate("P7D"),
        ask: must({ when: "asset.strainers" }),
      }),
      hot_supply: measured(
        "Hot supply, at the end of the first minute",
        BLENDED,
        [{ min: 50, basis: `${TABLE_1}: supply to a mixing valve, after 1 minute` }],
        { ask: must({ wait: { atLeast: 45, atMost: 60 } }) },
      ),
      cold_supply: measured(
        "Cold supply",
        { ...BLENDED, plausible: { min: 1, max: 45 } },
        [{ exclusiveMax: 20, basis: `${TABLE_1}: below 20 °C after 2 minutes` }],
        { grade: byDate("P7D"), ask: must({ wait: { atLeast: 120, atMost: 180 } }) },
      ),
      blend: measured("Mixed water, once it is steady", BLENDED, [
        { max: "hottest", basis: `${GUIDANCE_NOTE}, and ${PART_G}` },
        {
          sameAsLast: { within: 2, whenNone: "not-applied" },
          severity: "advisory",
          basis: `Within 2 K of the last test. ${COMMON_PRACTICE}`,
        },
      ]),
      shut_off: measured(
        "Time from shutting the cold supply until the flow stops",
        { unit: "s", decimals: 0, plausible: { min: 0, max: 120 } },
        [
          {
            max: 5,
            basis: "NHS Model Engineering Specification D 08, fail-safe (confirm the figure there)",
          },
        ],
        { ask: must({ when: "asset.fail_safe" }) },
      ),
      restored: sound(
        "Cold supply open again, and the mixed water back where it was?",
        COMMON_PRACTICE,
        { ask: must({ when: "asset.fail_safe" }) },
      ),
    },
    stops: [
      {
        after: ["blend"],
        on: ["fail"],
        points: ["shut_off", "restored"],
        say: "Too hot already: take the outlet out of use. No shut-off test until it is set.",
      },
    ],
  }),
  interval: {
    title: "Mixing valve, in-service test",
    rule: { kind: "from-last-done", every: "P6M", early: "P14D", late: "P14D" },
    basis: `Six months, then by the drift found. ${COMMON_PRACTICE}`,
  },
  note: "Supplies, mixed water by outlet, drift since last time, and the shut-off in seconds.",
};
