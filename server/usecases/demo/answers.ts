import type { Answers, Particulars } from "@roundbook/schemas";
import type { DemoAsset } from "./assets.ts";
import type { CheckName } from "./kinds.ts";
import type { Random } from "./random.ts";

/** How long ago: inspections back from the last one, which is 0, and days. */
interface Ago {
  readonly age: number;
  readonly days: number;
}
type Findings = (asset: DemoAsset, ago: Ago, random: Random) => Answers;

const allOk = (...points: readonly string[]): Answers =>
  Object.fromEntries(points.map((point) => [point, "ok" as const]));
const measured = (value: number, unit: string) => ({ value, unit });

/** Ohms per metre at 20 °C by cross-section, as the checklists have it. */
const OHMS: Readonly<Record<string, number>> = {
  0.75: 0.026,
  1: 0.0195,
  1.5: 0.0133,
  2.5: 0.00798,
};

/** A sound cord reads between three and eight tenths of its limit, with a value of its own. */
function earth({ length, csa }: Particulars, number: string, random: Random) {
  const limit = 0.1 + Number(length) * (OHMS[String(csa)] ?? 0);
  const own = 0.4 + (Number(number) % 7) * 0.06;
  return measured(Number((limit * (own + random.next() * 0.04)).toFixed(3)), "Ohm");
}

/** Good insulation is beyond what the tester can show. */
const insulation = (random: Random) =>
  random.next() < 0.7
    ? { value: 200, unit: "MOhm", comparator: ">" as const }
    : measured(random.whole(40, 190), "MOhm");

/** About 300 km a week, each vehicle by its own account. */
const odometer = ({ number }: DemoAsset, { days }: Ago) => {
  const today = 38_000 + Number(number.slice(-1)) * 7300;
  return measured(Math.round(today - days * (38 + Number(number.slice(-1)) * 3)), "km");
};

const FINDINGS: Readonly<Record<CheckName, Findings>> = {
  extension_lead: (asset, _ago, random) => ({
    ...allOk("cable", "plug", "label", "polarity"),
    insulation: insulation(random),
    earth_continuity: earth(asset.particulars, asset.number, random),
  }),
  portable: (asset, _ago, random) => ({
    ...allOk("cord", "plug", "casing", "guard", "works"),
    insulation: insulation(random),
    earth_continuity: earth(asset.particulars, asset.number, random),
  }),
  ladder: (asset, { age }, random) => ({
    ...allOk("stiles", "rungs", "feet", "joints", "label"),
    ...(asset.particulars.kind === "platform" ? {} : allOk("locks")),
    condition: Math.min(5, 3 + Math.min(1, age) + random.whole(0, 1)),
  }),
  fire_door: (asset, _ago, random) => ({
    ...allOk("latch", "seals", "leaf", "sign"),
    ...(asset.particulars.glazed === true ? allOk("glass") : {}),
    gap_head: measured(random.reading(2.4, 3.5, 1), "mm"),
    gap_hinge: measured(random.reading(2.2, 3.2, 1), "mm"),
    gap_lock: measured(random.reading(2.4, 3.6, 1), "mm"),
    closing: "closes",
  }),
  outlet: (asset, _ago, random) => ({
    ...allOk("tap"),
    hot: measured(random.reading(52.5, 56.5 + (Number(asset.number) % 3), 1), "Cel"),
    cold: measured(random.reading(9, 16.5, 1), "Cel"),
  }),
  calorifier: (asset, { age }, random) => ({
    ...allOk("valves"),
    // One of them loses 0.09 °C a month on its way to the limit.
    flow: measured(
      Number((asset.number === "7104" ? 60.4 + age * 0.09 : random.reading(61, 64, 1)).toFixed(1)),
      "Cel",
    ),
    return_pipe: measured(random.reading(51.5, 54.5, 1), "Cel"),
  }),
  vehicle: (asset, ago) => ({
    ...allOk("tyres", "lights", "leaks"),
    odometer: odometer(asset, ago),
  }),
  vehicle_service: (asset, ago) => ({
    ...allOk("oil", "brakes", "battery"),
    odometer: odometer(asset, ago),
  }),
  calorifier_yearly: () => allOk("drain", "lagging", "valve"),
  reopening: (_asset, _ago, random) => ({
    ...allOk("flushed", "head"),
    hot: measured(random.reading(52, 57, 1), "Cel"),
  }),
};

/** Findings worth telling, by asset number and inspections back from the last. */
const PLANTED: Readonly<Record<string, Readonly<Record<number, Answers>>>> = {
  "1015": { 0: { feet: "not-ok", condition: 2 } },
  "4012": { 0: { condition: 4 } },
  "4031": { 0: { earth_continuity: measured(0.131, "Ohm") } },
  "4033": { 0: { earth_continuity: measured(0.198, "Ohm") } },
  "4035": { 0: { earth_continuity: measured(0.187, "Ohm") } },
  "4047": { 0: { hot: measured(54.2, "Cel") } },
  "4058": {
    0: { closing: "slow", gap_head: measured(4.6, "mm") },
    2: { closing: "slow" },
    4: { gap_head: measured(4.3, "mm") },
  },
  "4067": { 0: { earth_continuity: measured(0.412, "Ohm") } },
  "7064": { 0: { hot: measured(48.6, "Cel") }, 7: { hot: measured(49.7, "Cel") } },
  "1062": { 3: { hot: measured(61.3, "Cel") } },
  "7104": { 0: { valves: "not-ok" } },
};

export const answersOf = (
  check: CheckName,
  asset: DemoAsset,
  ago: Ago,
  random: Random,
): Answers => ({
  ...FINDINGS[check](asset, ago, random),
  ...(check === asset.kind ? PLANTED[asset.number]?.[ago.age] : {}),
});
