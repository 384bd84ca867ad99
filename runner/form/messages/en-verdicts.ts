/** Verdicts and how many of each: all that a round's first screen says in the words of the form. */
export const VERDICT_WORDS = {
  "verdict.pass": "Pass",
  "verdict.advisory": "Advisory",
  "verdict.fail": "Fail",
  "verdict.undecided": "Undecided",
  "verdict.not-counted": "Not counted",
  "verdict.not-evaluated": "Not evaluated",
  "verdict.none": "No limits",
  "tally.pass": "{count} pass",
  "tally.advisory": "{count} advisory",
  "tally.fail": "{count} fail",
  "tally.undecided": "{count} undecided",
  "tally.not-counted": "{count} not counted",
  "tally.not-judged": "{count} not judged",
  "reservation.incomplete": "not complete",
  "reservation.awaited": "result awaited",
} as const;
