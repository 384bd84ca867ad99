/** The door to the starter checklists: data, loaded only where one is chosen. */
import type { Starter } from "./starter.ts";

export type { Starter } from "./starter.ts";

/** In the order of the list that a manager chooses from. */
export const STARTERS: readonly Starter[] = [];
