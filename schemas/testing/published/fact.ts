/**
 * How well a figure is known: R read in the source, S read on a page that quotes it, M from memory
 * of the named source, C common practice without a source.
 */
export type Marker = "R" | "S" | "M" | "C";

/** Where a figure stands written. */
export interface Origin {
  readonly source: string;
  readonly section: string | null;
  readonly year: number | null;
  readonly marker: Marker;
}

/** A published figure by its id in the collection, and whether our engine is held against it. */
export interface Fact extends Origin {
  readonly id: string;
  readonly used: "engine" | "not-ours";
  /** Why it is not ours; absent where it is used. */
  readonly reason?: string;
}

/** Figures that the tests beside this file put through the real engine. */
export const engineFacts = (
  origin: Origin,
  rows: readonly { readonly id: string }[],
): readonly Fact[] => rows.map(({ id }) => ({ id, ...origin, used: "engine" }));

/** Figures that nothing in the engine could agree or disagree with. */
export const notOurs = (origin: Origin, reason: string, ids: readonly string[]): readonly Fact[] =>
  ids.map((id) => ({ id, ...origin, used: "not-ours", reason }));
