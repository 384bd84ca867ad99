/**
 * Why a point, limit or score has its verdict. `working` is the bound worked out with its numbers,
 * such as 0.1 + 10 × 0.0133.
 */
export const JUDGE_WORDS = {
  "within-max": "max {bound} {unit}[ = {working}]; {comparator}{value} {unit} is {by} {unit} below",
  "above-max": "max {bound} {unit}[ = {working}]; {comparator}{value} {unit} is {by} {unit} above",
  "astride-max":
    "max {bound} {unit}[ = {working}]; {comparator}{value} {unit} may lie on either side",
  "within-min": "min {bound} {unit}[ = {working}]; {comparator}{value} {unit} is {by} {unit} above",
  "below-min": "min {bound} {unit}[ = {working}]; {comparator}{value} {unit} is {by} {unit} below",
  "astride-min":
    "min {bound} {unit}[ = {working}]; {comparator}{value} {unit} may lie on either side",
  "within-exclusive-max":
    "below {bound} {unit}[ = {working}]; {comparator}{value} {unit} is {by} {unit} below",
  "not-below-exclusive-max":
    "below {bound} {unit}[ = {working}]; {comparator}{value} {unit} is not, by {by} {unit}",
  "astride-exclusive-max":
    "below {bound} {unit}[ = {working}]; {comparator}{value} {unit} may lie on either side",
  "within-exclusive-min":
    "above {bound} {unit}[ = {working}]; {comparator}{value} {unit} is {by} {unit} above",
  "not-above-exclusive-min":
    "above {bound} {unit}[ = {working}]; {comparator}{value} {unit} is not, by {by} {unit}",
  "astride-exclusive-min":
    "above {bound} {unit}[ = {working}]; {comparator}{value} {unit} may lie on either side",
  accepted: "{answer} is among what is accepted: {accept}",
  "not-accepted": "{answer} is not among what is accepted: {accept}",

  "no-limits": "the point has no limits",
  "not-asked": "not asked",
  "not-answered": "not answered",
  absent: "no answer: {reason}, which is allowed",
  "absence-not-allowed": "no answer: {reason}; allowed are only: {allowed}",
  "no-limit-applies": "no limit applies",
  "limit-not-for-kind": "a {limit} limit says nothing about a {kind}",
  "unit-not-convertible": "{unit} cannot be converted to {to}",
  "formula-refused": "the formula {formula} cannot be used: {cause}",
  cycle: "{name} leads back to itself",
  "not-explained": "not worked out",

  "not-an-answer": "this is no answer to a {kind}",
  "not-finite-reading": "the reading is not a finite number",
  "not-among-choices": "{answer} is none of the choices: {choices}",
  "grade-out-of-range": "{answer} lies outside {minimum} to {maximum}",

  "score-band": "{score} is in the band {band}: {sum} of {most} over {answered} answered",
  "score-below-bands": "{score} is below every band: {sum} of {most} over {answered} answered",
  "score-nothing-answered": "nothing was answered",
  "score-point-undecided": "{point} is not answered",
  "score-point-ungraded": "{point} has no grade",

  "mandatory-not-answered": "this has to be answered",
  "nothing-answered": "nothing is answered",
  "ask-undecided": "whether this is asked cannot be told: {cause}",
  "evidence-missing": "{atLeast} {kind} asked for with the verdict {verdict}, {given} given",

  missing: "{name} is not known",
  "wrong-type": "this is not what it has to be: {expected} {name}",
  "not-finite": "{operation} gives no finite number",
  "no-rule": "no row of the table fits {inputs}",
  "rules-conflict": "rows {rules} of the table contradict each other",
} as const;
