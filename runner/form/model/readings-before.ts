import type { Answers, Comparator } from "@roundbook/schemas";
import type { LastReading } from "../fields/field.ts";

/** What a limit that compares with the last inspection is given, where only its readings are kept. */
export const readingsBefore = (previous: Readonly<Record<string, LastReading>>): Answers =>
  Object.fromEntries(
    Object.entries(previous).map(([name, { value, unit, comparator }]) => [
      name,
      { value, unit, ...(comparator && { comparator: comparator as Comparator }) },
    ]),
  );
