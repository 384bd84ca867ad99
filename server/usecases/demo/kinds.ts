import type { ParticularDefinitions } from "@roundbook/schemas";
import { EXTENSION_LEAD } from "./checklists/extension-lead.ts";
import { FIRE_DOOR } from "./checklists/fire-door.ts";
import { LADDER } from "./checklists/ladder.ts";
import type { Document } from "./checklists/parts.ts";
import { PORTABLE_CLASS_I } from "./checklists/portable.ts";
import { CALORIFIER, OUTLET } from "./checklists/water.ts";

export type KindName =
  | "extension_lead"
  | "portable"
  | "ladder"
  | "fire_door"
  | "outlet"
  | "calorifier";

/** An asset type of the demo estate with its checklist and how often it is looked at. */
export interface Kind {
  readonly title: string;
  readonly document: Document;
  readonly interval: { title: string; every: string; early?: string; late?: string; basis: string };
}

export const KINDS: Readonly<Record<KindName, Kind>> = {
  extension_lead: {
    title: "Extension lead",
    document: EXTENSION_LEAD,
    interval: {
      title: "Extension lead, 6 months",
      every: "P6M",
      early: "P1M",
      basis: "Own risk assessment: moved daily, outdoors and in the workshop",
    },
  },
  portable: {
    title: "Portable appliance, class I",
    document: PORTABLE_CLASS_I,
    interval: {
      title: "Portable appliance, yearly",
      every: "P1Y",
      early: "P1M",
      late: "P14D",
      basis: "Own risk assessment",
    },
  },
  ladder: {
    title: "Ladder",
    document: LADDER,
    interval: {
      title: "Ladder, formal inspection",
      every: "P6M",
      early: "P1M",
      basis: "Own risk assessment, common practice",
    },
  },
  fire_door: {
    title: "Fire door",
    document: FIRE_DOOR,
    interval: {
      title: "Fire door, quarterly",
      every: "P3M",
      early: "P14D",
      late: "P7D",
      basis: "Own fire risk assessment",
    },
  },
  outlet: {
    title: "Hot water outlet",
    document: OUTLET,
    interval: {
      title: "Outlet temperatures, monthly",
      every: "P1M",
      early: "P7D",
      late: "P7D",
      basis: "HSE HSG274 part 2: sentinel outlets monthly",
    },
  },
  calorifier: {
    title: "Calorifier",
    document: CALORIFIER,
    interval: {
      title: "Calorifier, monthly",
      every: "P1M",
      early: "P7D",
      late: "P7D",
      basis: "HSE HSG274 part 2: flow and return monthly",
    },
  },
};

export const KIND_NAMES = Object.keys(KINDS) as readonly KindName[];

/** A type knows what its checklist asks of an asset: described once, in the checklist. */
export const particularsOf = (name: KindName): ParticularDefinitions =>
  (KINDS[name].document.particulars ?? {}) as ParticularDefinitions;
