import type { Role } from "@roundbook/schemas";
import type { Store } from "../store/open-store.ts";
import { ChecklistCache } from "./checklist-cache.ts";

/** What every use-case may count on; clock and ids come from outside. */
export interface Context {
  readonly store: Store;
  /** Milliseconds since the Unix epoch. */
  readonly clock: () => number;
  /** A new UUID version 7. */
  readonly newId: () => string;
  readonly checklists: ChecklistCache;
  /** Told of faults of the program that an answer to a user hides. */
  readonly report: (error: unknown) => void;
}

/** Who is signed in. */
export interface Session {
  readonly person: string;
  readonly role: Role;
}

export const createContext = (given: {
  readonly store: Store;
  readonly clock: () => number;
  readonly newId: () => string;
  readonly report?: (error: unknown) => void;
}): Context => ({ report: () => undefined, ...given, checklists: new ChecklistCache() });
