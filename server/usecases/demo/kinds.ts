import type { IntervalRule, ParticularDefinitions } from "@roundbook/schemas";
import { EXTENSION_LEAD } from "./checklists/extension-lead.ts";
import { FIRE_DOOR } from "./checklists/fire-door.ts";
import { LADDER } from "./checklists/ladder.ts";
import type { Document } from "./checklists/parts.ts";
import { PORTABLE_CLASS_I } from "./checklists/portable.ts";
import { VEHICLE_LOOK, VEHICLE_SERVICE } from "./checklists/vehicle.ts";
import { CALORIFIER, CALORIFIER_YEARLY, OUTLET, REOPENING } from "./checklists/water.ts";

export type KindName =
  | "extension_lead"
  | "portable"
  | "ladder"
  | "fire_door"
  | "outlet"
  | "calorifier"
  | "vehicle";
export type OtherName = "reopening" | "calorifier_yearly" | "vehicle_service";
export type CheckName = KindName | OtherName;

/** A checklist of the demo estate and when it is due. */
export interface Check {
  readonly document: Document;
  readonly title: string;
  readonly rule: IntervalRule;
  readonly basis: string;
}

/** An asset type of the demo estate with the check that its rounds are walked for, and others. */
export interface Kind extends Check {
  readonly name: string;
  /** How long there was between two of its rounds. */
  readonly every: string;
  readonly others: readonly OtherName[];
}

const OWN = "Own risk assessment";

export const KINDS: Readonly<Record<KindName, Kind>> = {
  extension_lead: {
    name: "Extension lead",
    document: EXTENSION_LEAD,
    title: "Extension lead, 6 months",
    every: "P6M",
    rule: { kind: "from-last-done", every: "P6M", early: "P1M" },
    basis: `${OWN}: moved daily, outdoors and in the workshop`,
    others: [],
  },
  portable: {
    name: "Portable appliance, class I",
    document: PORTABLE_CLASS_I,
    title: "Portable appliance, yearly",
    every: "P1Y",
    rule: { kind: "from-last-done", every: "P1Y", early: "P1M", late: "P14D" },
    basis: OWN,
    others: [],
  },
  ladder: {
    name: "Ladder",
    document: LADDER,
    title: "Ladder, formal inspection",
    every: "P6M",
    rule: { kind: "from-last-done", every: "P6M", early: "P1M" },
    basis: `${OWN}, common practice`,
    others: [],
  },
  fire_door: {
    name: "Fire door",
    document: FIRE_DOOR,
    title: "Fire door, quarterly",
    every: "P3M",
    rule: {
      kind: "from-last-done",
      every: "P3M",
      early: "P14D",
      late: "P7D",
      onDayOff: "due-anyway",
      whenClosed: "on-reopening",
    },
    basis: "Own fire risk assessment",
    others: [],
  },
  outlet: {
    name: "Hot water outlet",
    document: OUTLET,
    title: "Outlet temperatures, monthly",
    every: "P1M",
    rule: {
      kind: "from-last-done",
      every: "P1M",
      early: "P7D",
      late: "P7D",
      onDayOff: "due-anyway",
      whenClosed: "excused",
    },
    basis: "HSE HSG274 part 2: sentinel outlets monthly",
    others: ["reopening"],
  },
  calorifier: {
    name: "Calorifier",
    document: CALORIFIER,
    title: "Calorifier, monthly",
    every: "P1M",
    rule: {
      kind: "from-last-done",
      every: "P1M",
      early: "P7D",
      late: "P7D",
      onDayOff: "due-anyway",
    },
    basis: "HSE HSG274 part 2: flow and return monthly",
    others: ["calorifier_yearly"],
  },
  vehicle: {
    name: "Vehicle",
    document: VEHICLE_LOOK,
    title: "Vehicle, weekly look",
    every: "P1W",
    rule: { kind: "each-period", period: "week", onDayOff: "due-anyway" },
    basis: `${OWN}, common practice`,
    others: ["vehicle_service"],
  },
};

export const OTHERS: Readonly<Record<OtherName, Check>> = {
  reopening: {
    document: REOPENING,
    title: "Outlet, before use on reopening",
    rule: {
      kind: "on-event",
      after: ["reopened"],
      within: "P0D",
      early: "P3D",
      blocks: true,
      whenClosed: "due-anyway",
      onDayOff: "due-anyway",
    },
    basis: "HSE HSG274 part 2: flush before use after standing",
  },
  calorifier_yearly: {
    document: CALORIFIER_YEARLY,
    title: "Calorifier, yearly inspection",
    rule: { kind: "anniversary", every: "P12M", within: "P2M", afterLate: "restart" },
    basis: "HSE HSG274 part 2: inspected yearly",
  },
  vehicle_service: {
    document: VEHICLE_SERVICE,
    title: "Vehicle, service",
    rule: {
      kind: "on-usage",
      point: "odometer",
      every: 10_000,
      early: 1000,
      late: 500,
      unit: "km",
      orAfter: "P12M",
    },
    basis: "The maker’s handbook: 10 000 km or a year",
  },
};

export const KIND_NAMES = Object.keys(KINDS) as readonly KindName[];

export const checkOf = (name: CheckName): Check =>
  name in OTHERS ? OTHERS[name as OtherName] : KINDS[name as KindName];

/** A type knows what its checklist asks of an asset: described once, in the checklist. */
export const particularsOf = (name: KindName): ParticularDefinitions =>
  (KINDS[name].document.particulars ?? {}) as ParticularDefinitions;
