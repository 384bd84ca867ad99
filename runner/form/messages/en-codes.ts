/** Why a point, a limit, a score or a window is as it is. */
const EXPLANATIONS = {
  "within-max": "{by~} below.",
  "above-max": "{by~} above.",
  "astride-max":
    "Somewhere {comparator|below|above} {value~} may be either side of the limit. Measure on a finer range.",
  "within-min": "{by~} above.",
  "below-min": "{by~} below.",
  "astride-min":
    "Somewhere {comparator|below|above} {value~} may be either side of the limit. Measure on a finer range.",
  "within-exclusive-max": "{by~} below.",
  "not-below-exclusive-max": "{by~} above.",
  "astride-exclusive-max":
    "Somewhere {comparator|below|above} {value~} may be either side of the limit. Measure on a finer range.",
  "within-exclusive-min": "{by~} above.",
  "not-above-exclusive-min": "{by~} below.",
  "astride-exclusive-min":
    "Somewhere {comparator|below|above} {value~} may be either side of the limit. Measure on a finer range.",
  accepted: "Among the answers accepted here.",
  "not-accepted": "Not among the answers accepted here.",
  "no-limits": "No limits here.",
  "not-asked": "Not asked here.",
  "not-answered": "Not answered.",
  absent: "Left out of the count for the reason given.",
  "absence-not-allowed":
    "The reason given does not leave this point out of the count, so it stays undecided.",
  "no-limit-applies": "No limit applies to this asset, so nothing can be said.",
  "limit-not-for-kind": "The limit does not fit this kind of point.",
  "unit-not-convertible": "{unit:unit} cannot be turned into {to:unit}.",
  "formula-refused": "The formula “{formula}” of this checklist could not be read.",
  cycle: "“{name}” is worked out from itself.",
  "not-explained": "Judged without its reasons.",
  "not-an-answer": "What is written is no answer to this point. Answer it again.",
  "not-finite-reading": "The reading is not a number.",
  "not-among-choices": "“{answer}” is not among the choices.",
  "grade-out-of-range": "{answer} is not between {minimum} and {maximum}.",
  "score-band": "{sum} of {most} over {answered} {answered|point|points}: {band}.",
  "score-below-bands": "{score} lies below every band.",
  "score-nothing-answered": "Nothing that counts was answered.",
  "score-point-undecided": "Undecided until “{point}” is answered.",
  "score-point-ungraded": "“{point}” gives no grade to count.",
  missing: "Needs “{name}”.",
  "wrong-type": "{name?“$”: }{expected} is what this takes.",
  "not-finite": "The sum does not come out: it divides by zero or grows without end.",
  "no-rule": "No rule of the table fits this asset.",
  "rules-conflict": "Rules of the table contradict each other here.",
  "never-done": "Never done yet; due since it was registered, {date}.",
  "from-last-done": "{every} from {date}, when it was last done.",
  "by-result": "The result of {date} asks for it again after {next}.",
  "at-once": "The result of {date} asks for it at once.",
  "no-interval-from-result": "The result of {date} names no interval, so it is due now.",
  "brought-forward": "{every} from {date}, brought forward from old papers.",
} as const;

/** What is wrong with answers and particulars. */
const ANSWER_PROBLEMS = {
  "mandatory-not-answered": "Not answered.",
  "nothing-answered": "Nothing is answered.",
  "ask-undecided": "Whether this is asked cannot be told: what it depends on is missing.",
  "evidence-missing": "Its {kind} is missing: {given} of {atLeast}.",
  "unknown-point": "No point of this checklist{point? is called “$”}{nearest?; nearest: “$”}.",
  "answer-shape": "What is written is no answer to this kind of point.",
  "answer-not-an-option": "Not among the choices: {options}.",
  "answer-too-small": "Must be {limit} or more.",
  "answer-too-large": "Must be {limit} or less.",
  "answer-too-long": "Must be {limit} characters or fewer.",
  "unknown-particular": "“{name}” is no particular here{nearest?; nearest: “$”}.",
  "particular-wrong-type": "“{name}” takes {expected}.",
  "particular-not-allowed": "“{name}” must be one of {allowed}.",
  "particular-too-small": "“{name}” must be {limit} or more.",
  "particular-too-large": "“{name}” must be {limit} or less.",
  "particular-too-long": "“{name}” must be {limit} characters or fewer.",
} as const;

export const CODE_WORDS = {
  "code.unknown": "This needs a newer Roundbook to be explained ({code}).",
  ...EXPLANATIONS,
  ...ANSWER_PROBLEMS,
} as const;
