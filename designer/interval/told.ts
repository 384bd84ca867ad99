/** What was done last with an interval that is being written: told above it until it changes. */
export type Told = "kept" | "in-force" | null;
