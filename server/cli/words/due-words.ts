/** Why an asset is due when it is. */
export const DUE_WORDS = {
  "never-done": "never done; registered {date}",
  "from-last-done": "{every} from {date}, when it was last done",
  "by-result": "{next} from {date}, by the result of {score}",
  "at-once": "at once, by the result of {score} on {date}",
  "no-interval-from-result": "the result of {score} on {date} gives no interval, so at once",
  "brought-forward": "{every} from {date}, brought forward from old papers",
} as const;
