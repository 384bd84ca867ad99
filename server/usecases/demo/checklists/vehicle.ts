import { checklist, look } from "./parts.ts";

const BASIS = "The maker's handbook and common practice for vehicles";
const CAUTIONS = [
  "Engine off, brake on, wheels chocked. Never under a raised body.",
  "A vehicle with a fault that matters is not driven until it is put right.",
] as const;

/** Read for the service. */
const odometer = {
  $ref: "#/$defs/reading",
  title: "Odometer",
  quantity: { unit: "km", decimals: 0, plausible: { min: 0, max: 500_000 } },
  limits: [{ max: 250_000, severity: "advisory", basis: "Own practice: replaced beyond" }],
  ask: { mandatory: true, absentAllowed: ["not-measurable"] },
  grade: { means: "observation" },
};

export const VEHICLE_LOOK = checklist({
  title: "Vehicle: weekly look",
  minutes: 6,
  cautions: CAUTIONS,
  groups: [{ id: "look", title: "Look", points: ["tyres", "lights", "leaks", "odometer"] }],
  properties: {
    tyres: look("Tyres sound, tread and pressure right?", BASIS, "danger-now"),
    lights: look("Lights, horn and wipers work?", BASIS, "danger-now"),
    leaks: look("No leaks under it, levels right?", BASIS, "by-a-date", "P7D"),
    odometer,
  },
});

export const VEHICLE_SERVICE = checklist({
  title: "Vehicle: service",
  minutes: 90,
  cautions: CAUTIONS,
  groups: [{ id: "work", title: "Work", points: ["oil", "brakes", "battery", "odometer"] }],
  properties: {
    oil: look("Oil and filters changed?", BASIS, "by-a-date", "P14D"),
    brakes: look("Brakes within the maker’s limits?", BASIS, "danger-now"),
    battery: look("Battery holds its charge?", BASIS, "by-a-date", "P14D"),
    odometer,
  },
});
