import { checklist, look, reading } from "./parts.ts";

const HSG274 = "HSE HSG274 part 2";
const WATER_CAUTIONS = [
  "Use a probe, never the hand: hot water scalds.",
  "Avoid spray: run gently. Raising the storage temperature raises the risk of scalding.",
] as const;

const temperature = (title: string, limits: readonly Readonly<Record<string, unknown>>[]) =>
  reading({
    title,
    quantity: { unit: "Cel", alsoIn: ["[degF]"], decimals: 1, plausible: { min: 0, max: 100 } },
    limits,
    ask: { mandatory: true, absentAllowed: ["no-access", "not-measurable"] },
    means: "by-a-date",
    within: "P7D",
  });

export const OUTLET = checklist({
  title: "Hot water outlet: temperatures",
  minutes: 4,
  cautions: WATER_CAUTIONS,
  groups: [
    { id: "measure", title: "Measure", points: ["hot", "cold"] },
    { id: "look", title: "Look", points: ["tap"] },
  ],
  properties: {
    hot: {
      ...temperature("Hot, after one minute", [
        { min: 50, severity: "fail", basis: `50 °C within a minute at the outlet, ${HSG274}` },
        { max: 60, severity: "advisory", basis: "Above 60 °C scalds at once: own practice" },
      ]),
      description: "Run the hot tap for one minute, then read with the probe in the stream.",
    },
    cold: temperature("Cold, after two minutes", [
      { exclusiveMax: 20, severity: "fail", basis: `Below 20 °C after two minutes, ${HSG274}` },
    ]),
    tap: look("Tap works, no scale or drip?", "Own practice", "observation"),
  },
});

export const CALORIFIER = checklist({
  title: "Calorifier: flow, return and look",
  minutes: 6,
  cautions: WATER_CAUTIONS,
  particulars: {
    volume: { title: "Stored volume", type: "number", unit: "L", minimum: 10, maximum: 5000 },
  },
  groups: [
    { id: "measure", title: "Measure", points: ["flow", "return_pipe"] },
    { id: "look", title: "Look", points: ["valves"] },
  ],
  properties: {
    flow: temperature("Flow", [
      { min: 60, severity: "fail", basis: `60 °C where the water leaves, ${HSG274}` },
    ]),
    return_pipe: temperature("Return", [
      { min: 50, severity: "fail", basis: `50 °C where the water comes back, ${HSG274}` },
    ]),
    valves: look("Valves and joints dry?", "Own practice", "by-a-date", "P60D"),
  },
});

/** Before an outlet is used again after its site was closed. */
export const REOPENING = checklist({
  title: "Hot water outlet: before use on reopening",
  minutes: 8,
  cautions: WATER_CAUTIONS,
  groups: [{ id: "flush", title: "Flush and measure", points: ["flushed", "hot", "head"] }],
  properties: {
    flushed: look(
      "Run for five minutes, without spray?",
      `Little used outlets, ${HSG274}`,
      "by-a-date",
      "P1D",
    ),
    hot: temperature("Hot, after flushing", [
      { min: 50, severity: "fail", basis: `50 °C within a minute at the outlet, ${HSG274}` },
    ]),
    head: look("Shower head or aerator clean?", `Scale and slime, ${HSG274}`, "by-a-date", "P7D"),
  },
});

export const CALORIFIER_YEARLY = checklist({
  title: "Calorifier: yearly inspection",
  minutes: 45,
  cautions: WATER_CAUTIONS,
  groups: [{ id: "look", title: "Look", points: ["drain", "lagging", "valve"] }],
  properties: {
    drain: look(
      "Drain water clear after the first minute?",
      `Yearly, ${HSG274}`,
      "by-a-date",
      "P28D",
    ),
    lagging: look("Lagging whole and dry?", "Own practice", "observation"),
    valve: look("Safety valve lifts and reseats?", "The maker’s instructions", "danger-now"),
  },
});
