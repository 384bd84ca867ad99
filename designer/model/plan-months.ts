import { type CivilDate, civilParts, type PlanWeek, parseCivilDate } from "@roundbook/schemas";

export interface PlanMonth {
  readonly year: number;
  /** 1 for January. */
  readonly month: number;
  readonly checks: number;
  readonly weeks: readonly (PlanWeek & { readonly monday: CivilDate; readonly day: number })[];
}

/** Weeks by the month that their Monday lies in. */
export function monthsOf(weeks: readonly PlanWeek[]): readonly PlanMonth[] {
  const months: { year: number; month: number; weeks: PlanMonth["weeks"][number][] }[] = [];
  for (const week of weeks) {
    const monday = parseCivilDate(week.week);
    if (monday === undefined) continue;
    const { year, month, day } = civilParts(monday);
    const last = months.at(-1);
    const one = { ...week, monday, day };
    if (last?.year === year && last.month === month) last.weeks.push(one);
    else months.push({ year, month, weeks: [one] });
  }
  return months.map((one) => ({
    ...one,
    checks: one.weeks.reduce((sum, { checks }) => sum + checks, 0),
  }));
}

/** "7 h 05": hours and minutes as people write them. */
export const hoursOf = (minutes: number): { hours: number; minutes: string } => {
  const whole = Math.round(minutes);
  return { hours: Math.floor(whole / 60), minutes: String(whole % 60).padStart(2, "0") };
};
