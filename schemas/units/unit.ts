/**
 * Exponents of metre, kilogram, second, ampere, kelvin, candela, radian and of quantities that
 * convert to nothing else: colony-forming units, pH, sound pressure level, turbidity.
 */
export type Dimension = readonly number[];

/** A UCUM unit: base = (value × num + zero) ÷ den, in whole or decimal numbers so that it is exact. */
export interface Unit {
  readonly code: string;
  readonly num: number;
  readonly den: number;
  /** Offset of the scale's zero in base units × den; only temperatures have one. */
  readonly zero: number;
  readonly dimension: Dimension;
}

export const sameDimension = (a: Unit, b: Unit): boolean =>
  a.dimension.every((exponent, axis) => exponent === b.dimension[axis]);
