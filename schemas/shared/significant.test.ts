import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { roundSignificant } from "./significant.ts";

const exact = (value: number) => Number(value.toPrecision(12));

describe("rounding to 12 significant digits", () => {
  test.each([
    [0.1 + 0.2, 0.3],
    [0.1 + 10 * 0.0133, 0.233],
    [122.00000000000001, 122],
    [121.99999999999994, 122],
    [1234567890125, 1234567890130],
    [-0.123456789012, -0.123456789012],
    [9.9999999999951, 10],
    [-9.9999999999951, -10],
    [999999999999.5, 1e12],
    [5e-324, 5e-324],
    [1.7976931348623157e308, 1.79769313486e308],
    [1e300, 1e300],
    [0, 0],
  ])("%d is %d", (value, rounded) => {
    expect(roundSignificant(value)).toBe(rounded);
  });

  test("numbers that are none stay none", () => {
    expect(roundSignificant(Number.NaN)).toBeNaN();
    expect(roundSignificant(Number.NEGATIVE_INFINITY)).toBe(Number.NEGATIVE_INFINITY);
  });

  test("agrees with the exact decimal expansion for every kind of double", () => {
    const doubles = fc.oneof(
      fc.double({ noNaN: true }),
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.integer({ min: -(10 ** 9), max: 10 ** 9 }).map((n) => n / 1000),
      // Ties and near-ties at the thirteenth digit.
      fc
        .tuple(fc.integer({ min: 1e11, max: 1e12 - 1 }), fc.integer({ min: -30, max: 30 }))
        .map(([digits, exponent]) => Number(`${digits}5e${exponent}`)),
      fc.integer({ min: -320, max: 308 }).map((exponent) => Number(`1e${exponent}`)),
      fc.integer({ min: -300, max: 300 }).map((exponent) => Number(`9.9999999999995e${exponent}`)),
    );
    fc.assert(
      fc.property(doubles, (value) => {
        expect(roundSignificant(value) === exact(value)).toBe(true);
      }),
      { numRuns: 50_000 },
    );
  });

  test("rounding twice changes nothing", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true }), (value) => {
        const once = roundSignificant(value);
        expect(roundSignificant(once)).toBe(once);
      }),
    );
  });
});
