import { parseCivilDate } from "@roundbook/schemas";
import { dayAndMonth } from "../form/index.ts";

/** Wall time of an instant in the reader's own zone, "10:58". */
export const clockTime = (instant: string): string => {
  const at = new Date(instant);
  return `${String(at.getHours()).padStart(2, "0")}:${String(at.getMinutes()).padStart(2, "0")}`;
};

export const printDay = (iso: string): string => {
  const day = parseCivilDate(iso);
  return day === undefined ? iso : dayAndMonth(day);
};

export const printCivil = (instant: string): string => printDay(instant.slice(0, 10));
