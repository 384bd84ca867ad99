/** The door to the starter checklists: data, loaded only where one is chosen. */

import { CALORIFIER } from "./calorifier.ts";
import { EMERGENCY_LUMINAIRE, EMERGENCY_LUMINAIRE_DURATION } from "./emergency-luminaire.ts";
import { EXTENSION_LEAD } from "./extension-lead.ts";
import { EXTINGUISHER } from "./extinguisher.ts";
import { FIRE_DOOR } from "./fire-door.ts";
import { FIXED_APPLIANCE } from "./fixed-appliance.ts";
import { LADDER } from "./ladder.ts";
import { LIFTING_ACCESSORY } from "./lifting-accessory.ts";
import { MIXING_VALVE } from "./mixing-valve.ts";
import { PORTABLE_CLASS_1 } from "./portable-class-1.ts";
import { PORTABLE_CLASS_2 } from "./portable-class-2.ts";
import { RESIDUAL_CURRENT_DEVICE } from "./residual-current-device.ts";
import type { Starter } from "./starter.ts";
import { VEHICLE } from "./vehicle.ts";
import { WATER_OUTLET } from "./water-outlet.ts";

export type { Starter } from "./starter.ts";

/** In the order of the list that a manager chooses from. */
export const STARTERS: readonly Starter[] = [
  PORTABLE_CLASS_1,
  PORTABLE_CLASS_2,
  EXTENSION_LEAD,
  RESIDUAL_CURRENT_DEVICE,
  FIXED_APPLIANCE,
  LADDER,
  FIRE_DOOR,
  WATER_OUTLET,
  CALORIFIER,
  MIXING_VALVE,
  VEHICLE,
  LIFTING_ACCESSORY,
  EMERGENCY_LUMINAIRE,
  EMERGENCY_LUMINAIRE_DURATION,
  EXTINGUISHER,
];
