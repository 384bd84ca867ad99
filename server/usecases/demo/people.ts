import type { Role } from "@roundbook/schemas";
import type { CheckName } from "./kinds.ts";

export interface DemoPerson {
  readonly name: string;
  readonly signIn: string;
  readonly role: Role;
}

export const PEOPLE = {
  morwen: { name: "Morwen Tolvane", signIn: "morwen", role: "manager" },
  dag: { name: "Dag Ruskeen", signIn: "dag", role: "inspector" },
  isel: { name: "Isel Fairbrook", signIn: "isel", role: "inspector" },
  pell: { name: "Pell Aldermoss", signIn: "pell", role: "inspector" },
} as const satisfies Readonly<Record<string, DemoPerson>>;

export type Inspector = "dag" | "isel" | "pell";
export const INSPECTORS: readonly Inspector[] = ["dag", "isel", "pell"];

/** The technician tests what has a cord; the caretakers share the rest by site. */
export function inspectorOf(check: CheckName, site: string): Inspector {
  const technical: readonly CheckName[] = [
    "extension_lead",
    "portable",
    "vehicle_service",
    "calorifier_yearly",
  ];
  if (technical.includes(check)) return "pell";
  return site === "7" || site === "5" ? "isel" : "dag";
}
