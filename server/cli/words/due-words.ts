/** Why an asset is due when it is, and what makes a rule impossible. */
export const DUE_WORDS = {
  "never-done": "never done; registered {date}",
  "from-last-done": "{every} from {date}, when it was last done",
  "by-result": "{next} from {date}, by the result of {score}",
  "at-once": "at once, by the result of {score} on {date}",
  "no-interval-from-result": "the result of {score} on {date} gives no interval, so at once",
  "brought-forward": "{every} from {date}, brought forward from old papers",
  "anniversary-kept":
    "{every} after {deadline}, kept as counted from {anchor}: done in its window on {date}",
  "anniversary-kept-late":
    "the next after {deadline}, every {every} as counted from {anchor}: done late on {date}",
  "anniversary-restarted-early":
    "{every} from {date}, when it was done before its window opened on {opens}",
  "anniversary-restarted-late": "{every} from {date}, when it was done late; it was due {deadline}",
  "each-week": "once in each calendar week; last done {date}",
  "each-month": "once in each calendar month; last done {date}",
  "each-quarter": "once in each quarter of the year; last done {date}",
  "each-half-year": "once in each half of the year; last done {date}",
  "each-year": "once in each calendar year; last done {date}",
  "by-spacing": "{min} to {max} from {date}, when it was last done",
  "done-too-soon": "done again on {date}, sooner than {min}, which does not count",
  "never-after": "brought back to {date}, as never more than {limit} may pass",
  "covered-by-longer": "covered on {date} by the longer check {title}",
  "rolled-back": "rolled back to {date} from {closed}[, {reason}]",
  "no-open-day": "due on {closed} though closed[, {reason}]: no open day before it counts",
  "due-on-reopening": "{closed} is closed[, {reason}]: due on reopening, {date}, before use",
  "excused-while-closed": "excused while closed from {closed}[, {reason}]; due again {date}",
  "covers-lacks-points": "it does not ask {points}, or not in the same way",
  "covers-not-longer": "only a check at longer intervals covers one at shorter ones",
  "duration-of-nothing": "it has to be a day or more",
  "window-longer-than-interval": "{margin} is longer than the interval of {every}",
  "spacing-out-of-order":
    "the least spacing, {min}, comes first, then when it is due, then the greatest, {max}",
  "longest-shorter-than-interval":
    "never more than {limit} cannot hold where it is due only after {every}",
} as const;
