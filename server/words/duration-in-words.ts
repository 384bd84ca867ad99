import { DURATION, type ProblemParam } from "@roundbook/schemas";

const PATTERN = new RegExp(DURATION);
const PARTS = { Y: "year", M: "month", W: "week", D: "day" } as const;

const isPart = (letter: string): letter is keyof typeof PARTS => Object.hasOwn(PARTS, letter);

/** "P1Y6M" is "1 year 6 months", and no time at all "at once"; null for what is no duration. */
export function durationInWords(value: ProblemParam | undefined): string | null {
  if (typeof value !== "string" || !PATTERN.test(value)) return null;
  const parts = [...value.matchAll(/(\d+)([YMWD])/g)].flatMap(([, digits = "", letter = ""]) => {
    const count = Number(digits);
    if (count === 0 || !isPart(letter)) return [];
    return [`${count} ${PARTS[letter]}${count === 1 ? "" : "s"}`];
  });
  return parts.length === 0 ? "at once" : parts.join(" ");
}
