import { civilDate } from "@roundbook/schemas";
import { longDay } from "./dates.ts";

const two = (value: number): string => String(value).padStart(2, "0");

/** Wall time of an instant in the reader's own zone: "10:42", or with its seconds "10:42:07". */
export function wallTime(at: number, seconds = false): string {
  const date = new Date(at);
  const time = `${two(date.getHours())}:${two(date.getMinutes())}`;
  return seconds ? `${time}:${two(date.getSeconds())}` : time;
}

/** "Tuesday 13 October, 10:42" of an ISO 8601 instant, in the reader's own zone. */
export function instantWords(instant: string): string {
  const date = new Date(instant);
  if (Number.isNaN(date.getTime())) return instant;
  const day = civilDate(date.getFullYear(), date.getMonth() + 1, date.getDate());
  return `${longDay(day)}, ${wallTime(date.getTime())}`;
}
