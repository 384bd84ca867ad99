import { classes } from "./classes.ts";

export interface StripOption<Value extends string> {
  readonly value: Value;
  readonly label: string;
}

export interface AnswerStripProps<Value extends string> {
  /** Read out as the name of the group: the question. */
  readonly label: string;
  readonly options: readonly StripOption<Value>[];
  readonly chosen: Value | null;
  readonly onChoose: (value: Value) => void;
  readonly disabled?: boolean;
}

/** Equal, uncoloured answers of which nothing is preset; the chosen one is hand, reversed. */
export function AnswerStrip<Value extends string>(props: AnswerStripProps<Value>) {
  const { label, options, chosen, onChoose, disabled } = props;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as the ruled strip.
    <div
      className={classes("strip", isTall(options) && "strip-stacked")}
      role="group"
      aria-label={label}
    >
      {options.map((option) => (
        <button
          key={option.value}
          type="button"
          aria-pressed={option.value === chosen}
          disabled={disabled}
          onClick={() => onChoose(option.value)}
        >
          {option.label}
        </button>
      ))}
    </div>
  );
}

/** On a phone six grades fit side by side at 48 px, four words when they are short. */
function isTall(options: readonly { readonly label: string }[]) {
  const longest = Math.max(0, ...options.map(({ label }) => label.length));
  return longest <= 2 ? options.length > 6 : options.length > 4 || longest * options.length > 48;
}
