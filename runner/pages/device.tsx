import type { PersonRow, Role, SessionReply } from "@roundbook/schemas";
import { createContext, type ReactNode, useContext } from "react";
import type { DeviceDatabase } from "../offline/database.ts";
import type { Settings } from "../offline/settings.ts";
import type { Connection } from "../sync/connection.ts";

/** The person signed in on this device, with or without a network. */
export interface SignedIn {
  readonly person: Pick<PersonRow, "id" | "name"> & { readonly role: Role };
  readonly estate: NonNullable<SessionReply["estate"]>;
}

/** What every page may count on; put in place by `App` once the device's store is open. */
export interface Device extends SignedIn {
  readonly database: DeviceDatabase;
  /** Device clock, milliseconds UTC. */
  now(): number;
  readonly settings: Settings;
  changeSettings(change: Partial<Settings>): Promise<void>;
  /** Whether the server answers, what waits, and the way to send it now. */
  readonly connection: Connection;
}

const DeviceContext = createContext<Device | null>(null);

export const DeviceProvider = ({
  device,
  children,
}: {
  readonly device: Device;
  readonly children: ReactNode;
}) => <DeviceContext value={device}>{children}</DeviceContext>;

export const useDevice = (): Device => {
  const device = useContext(DeviceContext);
  if (!device) throw new Error("useDevice outside DeviceProvider");
  return device;
};
