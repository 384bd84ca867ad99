import { classes } from "./classes.ts";
import { desktopMargin, phoneMargin, widerThan } from "./margin-number.ts";

/** Where a number stands, decided by its width: in the margin, or above the name. */
export function numberPlace(number: string | undefined, size: number) {
  const above = number !== undefined && widerThan(phoneMargin, number, size);
  return { above, fitsDesktop: above && !widerThan(desktopMargin, number, size) };
}

type Place = ReturnType<typeof numberPlace>;

/** The class of the row around a number so placed. */
export function rowClass({ fitsDesktop }: Place) {
  return classes("row-target", fitsDesktop && "row-number-fits") ?? "";
}

/** The margin's cell; it keeps its column when the number stands above the name. */
export function MarginNumber({
  number,
  place,
}: {
  readonly number?: string;
  readonly place: Place;
}) {
  return (
    <span className={classes("row-number", place.above && "row-number-hidden")}>
      <span>{number}</span>
    </span>
  );
}

export function NumberAbove({
  number,
  place,
}: {
  readonly number?: string;
  readonly place: Place;
}) {
  if (!place.above) return null;
  return <span className="row-number-above">{number}</span>;
}
