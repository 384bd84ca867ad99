import { printQuantity } from "./print-unit.ts";

/** A figure with its unit, never broken over a line. */
export function Quantity({
  value,
  unit,
  decimals,
  decimal = ".",
  comparator,
}: {
  readonly value: number;
  /** UCUM code; "1" or empty prints the bare figure. */
  readonly unit?: string;
  readonly decimals?: number;
  readonly decimal?: "." | ",";
  readonly comparator?: "<" | ">" | "=" | "<=" | ">=";
}) {
  const text = printQuantity(value, unit, { decimals, decimal, comparator });
  return <span className="quantity">{text}</span>;
}
