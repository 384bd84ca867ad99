import { convert, type QuantityDefinition, type Reading } from "@roundbook/schemas";

/** A reading in the point's own unit, or `undefined` when its unit does not convert. */
export function inOwnUnit(reading: Reading, quantity: QuantityDefinition): number | undefined {
  return reading.unit === quantity.unit
    ? reading.value
    : convert(reading.value, reading.unit, quantity.unit);
}

/** True when a reading lies outside what is usual here, so that the person is asked about it. */
export function isUnusual(reading: Reading, quantity: QuantityDefinition): boolean {
  const usual = quantity.plausible;
  const value = inOwnUnit(reading, quantity);
  if (usual === undefined || value === undefined) return false;
  return (
    (usual.min !== undefined && value < usual.min) || (usual.max !== undefined && value > usual.max)
  );
}
