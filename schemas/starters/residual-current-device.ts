import type { ParticularDefinitions, PointDefinition } from "../checklist/meta-schema.ts";
import { ELECTRICAL_CAUTIONS } from "./electrical-parts.ts";
import { byDate, COMMON_PRACTICE, DANGER, draft, must, type Starter, sound } from "./starter.ts";

const particulars: ParticularDefinitions = {
  type: { title: "Type", enum: ["general", "selective"] },
  rated_current: {
    title: "Rated residual current",
    type: "number",
    unit: "mA",
    enum: [10, 30, 100, 300, 500],
  },
};

const TRIP_TIMES = "BS EN 61008-1 and 61009-1, table 1";
const MILLISECONDS = {
  unit: "ms",
  alsoIn: ["s"],
  decimals: 0,
  plausible: { min: 1, max: 2000 },
};

/** At 0° and at 180° of the mains wave. */
const trips = (
  title: string,
  combine: "highest" | "each",
  limit: NonNullable<PointDefinition["limits"]>[number],
  ask: NonNullable<PointDefinition["ask"]>,
): PointDefinition => ({
  title,
  $ref: "#/$defs/readings",
  quantity: MILLISECONDS,
  several: { count: 2, combine },
  limits: [limit],
  grade: DANGER,
  ask: must(ask),
});

export const RESIDUAL_CURRENT_DEVICE: Starter = {
  key: "residual-current-device",
  title: "Residual-current device",
  assetType: { name: "residual_current_device", title: "Residual-current device", particulars },
  checklist: draft({
    title: "Residual-current device: trip times",
    minutes: 8,
    particulars: { ...particulars },
    cautions: [
      ...ELECTRICAL_CAUTIONS,
      "The test cuts the supply: tell the people it feeds, and see that nothing is hurt by it.",
    ],
    groups: [
      { id: "look", title: "Look", points: ["whole", "notice"], groupAnswer: true },
      {
        id: "trip_tests",
        title: "Trip tests",
        points: [
          "half",
          "trip_1x",
          "trip_1x_selective",
          "current_5x",
          "trip_5x",
          "trip_5x_selective",
        ],
      },
      { id: "button_test", title: "Last of all", points: ["button"] },
    ],
    properties: {
      whole: sound("Device whole, no scorching, cover on?", COMMON_PRACTICE),
      notice: sound("Notice about its test button beside it?", "BS 7671, notices for RCDs", {
        grade: byDate("P28D"),
      }),
      half: sound(
        "At half the rated residual current: does it hold?",
        `${TRIP_TIMES}: no trip at half the rated residual current`,
        { grade: byDate("P28D") },
      ),
      trip_1x: trips(
        "Trip times at the rated residual current, at 0° and 180°",
        "highest",
        { max: 300, basis: `${TRIP_TIMES}: general type, 300 ms` },
        { when: "asset.type == 'general'" },
      ),
      trip_1x_selective: trips(
        "Trip times at the rated residual current, at 0° and 180° (selective)",
        "each",
        { min: 130, max: 500, basis: "Selective type: 130 to 500 ms, BS 7671 reg 643.7" },
        { when: "asset.type == 'selective'" },
      ),
      current_5x: {
        title: "Current of the fast test",
        $ref: "#/$defs/choice",
        oneOf: [
          { const: "five times", title: "Five times the rated residual current" },
          { const: "250 mA", title: "250 mA, as its maker says" },
          { const: "another", title: "Another current" },
          { $ref: "#/$defs/absent" },
        ],
        limits: [
          {
            accept: ["five times", "250 mA"],
            when: "asset.rated_current == 30",
            basis: "BS EN 61008-1 table 1: 30 mA devices may be set for 250 mA instead of 150 mA",
          },
          {
            accept: ["five times"],
            when: "asset.rated_current != 30",
            basis: TRIP_TIMES,
          },
        ],
        ask: must({ evidence: [], absentAllowed: ["not-applicable"] }),
      },
      trip_5x: trips(
        "Trip times in the fast test, at 0° and 180°",
        "highest",
        { max: 40, basis: `${TRIP_TIMES}: general type, 40 ms at five times` },
        { when: "asset.type == 'general'", absentAllowed: ["not-applicable"] },
      ),
      trip_5x_selective: trips(
        "Trip times in the fast test, at 0° and 180° (selective)",
        "each",
        { min: 50, max: 150, basis: `${TRIP_TIMES}: selective type, 50 to 150 ms at five times` },
        { when: "asset.type == 'selective'", absentAllowed: ["not-applicable"] },
      ),
      button: sound("Does its test button trip it?", COMMON_PRACTICE),
    },
    stops: [
      {
        after: ["whole"],
        on: ["fail"],
        groups: ["trip_tests", "button_test"],
        say: "A damaged device is not tested. Report it at once; opening it is for qualified people.",
      },
    ],
  }),
  interval: {
    title: "Trip times of residual-current devices",
    rule: { kind: "from-last-done", every: "P1Y", early: "P1M", late: "P1M" },
    basis: "Common practice, no source; the test button is pressed more often, as the notice says",
  },
  note: "Holds at half, trips in time at once and five times its residual current; general and selective.",
};
