import type { QuantityDefinition } from "@roundbook/schemas";
import { printNumber } from "../look/print-unit.ts";
import type { Messages } from "./messages.tsx";

/** "0 to 100", "0 or more", "100 or less": what is usual on a point, in its own unit. */
export function usualRange(t: Messages["t"], { plausible }: QuantityDefinition): string {
  const min = plausible?.min;
  const max = plausible?.max;
  if (min !== undefined && max !== undefined) {
    return t("reading.range", { min: printNumber(min), max: printNumber(max) });
  }
  if (min !== undefined) return t("reading.range-from", { min: printNumber(min) });
  return max === undefined ? "" : t("reading.range-to", { max: printNumber(max) });
}
