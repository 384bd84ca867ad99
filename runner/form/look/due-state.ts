export type DueState = "not-yet" | "in-window" | "last-day" | "over" | "undecided";

export interface DueDays {
  /** Civil dates as day numbers; null when it could not be worked out. */
  readonly earliest: number | null;
  readonly due: number | null;
  readonly latest: number | null;
  readonly today: number;
}

/** Overdue only after the latest day; with any date lacking nothing can be said, so undecided. */
export function dueState({ earliest, due, latest, today }: DueDays): DueState {
  const known = [earliest, due, latest, today].every((day) => Number.isInteger(day));
  if (!known || earliest === null || latest === null) return "undecided";
  if (today > latest) return "over";
  if (today === latest) return "last-day";
  return today < earliest ? "not-yet" : "in-window";
}

/** Where today's dot stands between the bars of the mark, kept clear of both, in the mark's px. */
export function dotBetween({ earliest, latest, today }: DueDays) {
  if (earliest === null || latest === null || latest <= earliest) return 36;
  return 9 + ((today - earliest) / (latest - earliest)) * 54;
}
