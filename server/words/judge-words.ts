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

  "within-guarded":
    "{comparator}{value} {unit} lies within {acceptance} {unit}: {bound} less a guard band of {guard}, by {rule}",
  "outside-guarded":
    "{comparator}{value} {unit} lies outside {acceptance} {unit}: {bound} moved by a guard band of {guard}, by {rule}",
  "astride-guarded":
    "{comparator}{value} {unit} may lie on either side of {acceptance} {unit}: {bound} moved by a guard band of {guard}, by {rule}",
  "conditional-pass":
    "{comparator}{value} {unit} lies within {bound} {unit}, but by less than the guard band of {guard}",
  "conditional-fail":
    "{comparator}{value} {unit} lies outside {bound} {unit}, but by less than the guard band of {guard}",
  "uncertainty-missing": "the uncertainty is not known",
  "uncertainty-negative": "the uncertainty comes out as {uncertainty}: it cannot be below nought",
  "same-as-last":
    "{comparator}{value} {unit} is {by} {unit} from {last}, the last one; {within} allowed",
  "not-same-as-last":
    "{comparator}{value} {unit} is {by} {unit} from {last}, the last one; {within} allowed",
  "astride-last":
    "{comparator}{value} {unit} may be more than {within} {unit} from {last}, the last one",
  "no-last": "there is no figure from before to compare it with",
  "not-before": "{value} is not before {bound}",
  "before-earliest": "{value} is before {bound}",
  "not-after": "{value} is not after {bound}",
  "after-latest": "{value} is after {bound}",
  stopped: "not asked, because of {by}: {say}",
  "stop-undecided": "whether this is asked hangs on {by}, which is not decided yet",
  "result-awaited": "the result of the sample {sample} is awaited",
  "too-few-readings": "{given} readings where {count} are asked for",
  "too-many-readings": "{given} readings where {count} are asked for",
  "censored-mean": "no mean can be told of readings that only say more or less than a figure",
  "elapsed-missing": "how long it was waited is not known",
  "read-too-early": "read after {elapsed} s, and {atLeast} s have to pass first",
  "read-too-late": "read after {elapsed} s, and at most {atMost} s may pass",
  "repeat-undecided": "how often {repeat} is asked cannot be told: {cause}",
  "count-not-right": "{count} is no number of times to ask it[; at most {atMost}]",
  "no-such-day": "there is no such day",

  "no-limits": "the point has no limits",
  "not-asked": "not asked",
  "not-answered": "not answered",
  absent: "no answer: {reason}, which is allowed",
  "absence-not-allowed":
    "no answer: {reason}, which is no reason allowed here[; allowed are only: {allowed}]",
  "no-limit-applies": "no limit applies",
  "limit-not-for-kind": "a {limit} limit says nothing about {kind}",
  "unit-not-convertible": "{unit} cannot be converted to {to}",
  "formula-refused": "the formula {formula} cannot be used: {cause}",
  cycle: "{name} leads back to itself",
  "not-explained": "not worked out",

  "not-an-answer": "this is no answer to {kind}",
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
  "evidence-missing":
    "evidence is missing: {kind}, {atLeast} asked for with the verdict {verdict}, {given} given",

  missing: "{name} is not known",
  "wrong-type": "[{name}: ]what stands here has to be {expected}",
  "not-finite": "{operation} gives no finite number",
  "no-rule": "no row of the table fits {inputs}",
  "rules-conflict": "rows {rules} of the table contradict each other",
  "hits-not-as-declared": "{found} rows of the table fit where it declares {expected}",
} as const;
