declare const brand: unique symbol;
type Branded<Base, Name extends string> = Base & { readonly [brand]: Name };

/** Whole days since 1970-01-01 in the proleptic Gregorian calendar; not an instant. */
export type CivilDate = Branded<number, "CivilDate">;
/** Milliseconds since the Unix epoch, UTC; not a civil date. */
export type Instant = Branded<number, "Instant">;
