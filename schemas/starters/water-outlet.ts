import type { ParticularDefinitions } from "../checklist/meta-schema.ts";
import { byDate, COMMON_PRACTICE, draft, measured, must, type Starter, sound } from "./starter.ts";

const particulars: ParticularDefinitions = {
  hot: { title: "Hot water", type: "boolean" },
  cold: { title: "Cold water", type: "boolean" },
  sentinel: { title: "Sentinel outlet", type: "boolean" },
  health_care: { title: "Health care", type: "boolean" },
  hot_within: { title: "Hot water judged within", enum: ["1 minute", "30 seconds"] },
  spray: { title: "Shower or spray", type: "boolean" },
};

const TABLE_1 = "HSE, Hot and cold water systems, table 1";
const G18_4 = "Water Regulations guidance G18.4";
const HEALTH = "HSG274 part 2: 55 °C in health care (confirm the figure there)";
const DAY = byDate("P1D");

export const WATER_OUTLET: Starter = {
  key: "water-outlet",
  title: "Hot and cold water outlet",
  assetType: { name: "water_outlet", title: "Water outlet", particulars },
  checklist: draft({
    title: "Water outlet: temperatures",
    minutes: 6,
    particulars: { ...particulars },
    cautions: [
      "Use the probe, never the hand: hot water scalds.",
      "Avoid spray: let the water run without splashing, and do not breathe its mist.",
      "Where a mixing valve is fitted, the hot supply is read before the valve.",
    ],
    values: {
      hot_general: { title: "Least hot, general", unit: "Cel", const: 50, basis: TABLE_1 },
      hot_health_care: { title: "Least hot, health care", unit: "Cel", const: 55, basis: HEALTH },
      hot_least: {
        title: "Least hot here",
        unit: "Cel",
        formula: "asset.health_care ? hot_health_care : hot_general",
      },
      rise: { title: "Allowed above the mains", unit: "K", const: 2, basis: COMMON_PRACTICE },
    },
    groups: [
      { id: "look", title: "Look", points: ["used", "clean", "head"] },
      { id: "hot_water", title: "Hot", points: ["hot_minute", "hot_half_minute"] },
      { id: "cold_water", title: "Cold", points: ["mains", "cold_two_minutes"] },
    ],
    properties: {
      used: sound(
        "Used, or flushed, within the last week?",
        "HSE sample recording sheets: infrequently used outlets flushed weekly",
        { grade: DAY },
      ),
      clean: sound("Outlet clean, no scale, slime or rust?", COMMON_PRACTICE, {
        grade: byDate("P7D"),
      }),
      head: sound("Spray head and hose clean and free of scale?", COMMON_PRACTICE, {
        grade: byDate("P7D"),
        ask: must({ when: "asset.spray" }),
      }),
      hot_minute: measured(
        "Hot, at the end of the first minute",
        { unit: "Cel", alsoIn: ["[degF]"], decimals: 1, plausible: { min: 5, max: 90 } },
        [{ min: "hot_least", basis: `${TABLE_1}, after 1 minute; ${HEALTH}` }],
        {
          description: "Open the tap fully, probe in the stream.",
          ask: must({
            when: "asset.hot && asset.hot_within == '1 minute'",
            wait: { atLeast: 45, atMost: 60 },
          }),
        },
      ),
      hot_half_minute: measured(
        "Hot, at the end of 30 seconds",
        { unit: "Cel", alsoIn: ["[degF]"], decimals: 1, plausible: { min: 5, max: 90 } },
        [{ min: "hot_least", basis: `${G18_4}, within 30 s; ${HEALTH}` }],
        {
          description: "Open the tap fully, probe in the stream.",
          ask: must({
            when: "asset.hot && asset.hot_within == '30 seconds'",
            wait: { atLeast: 20, atMost: 30 },
          }),
        },
      ),
      mains: measured(
        "Incoming mains, today",
        { unit: "Cel", alsoIn: ["[degF]"], decimals: 1, plausible: { min: 1, max: 35 } },
        [
          {
            exclusiveMax: 20,
            severity: "advisory",
            basis: `${TABLE_1}: incoming cold, preferably below`,
          },
        ],
        {
          grade: { means: "observation" },
          ask: must({ when: "asset.cold && asset.sentinel", evidence: [] }),
        },
      ),
      cold_two_minutes: measured(
        "Cold, after two minutes",
        { unit: "Cel", alsoIn: ["[degF]"], decimals: 1, plausible: { min: 1, max: 45 } },
        [
          { exclusiveMax: 20, basis: `${TABLE_1}: below 20 °C after 2 minutes` },
          {
            max: "answers.mains + rise",
            when: "asset.sentinel",
            severity: "advisory",
            basis: `Not more than 2 K above the mains. ${COMMON_PRACTICE}`,
          },
        ],
        { ask: must({ when: "asset.cold", wait: { atLeast: 120, atMost: 180 } }) },
      ),
    },
  }),
  interval: {
    title: "Sentinel outlet",
    rule: { kind: "from-last-done", every: "P1M", early: "P7D", late: "P7D" },
    basis: `${TABLE_1}: sentinel outlets monthly`,
  },
  note: "Hot within its minute, cold after two, both timed; 55 °C in health care.",
};
