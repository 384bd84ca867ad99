import { type ReactNode, useId } from "react";

export interface Choice<Value extends string> {
  readonly value: Value;
  readonly label: ReactNode;
  readonly aside?: ReactNode;
  readonly disabled?: boolean;
}

export interface ChoiceListProps<Value extends string> {
  readonly label: string;
  /** Keeps the label for those who hear it where a title above already says it. */
  readonly labelUnseen?: boolean;
  readonly choices: readonly Choice<Value>[];
  readonly chosen: Value | null;
  readonly onChoose: (value: Value) => void;
}

/** One of several ruled lines; the chosen one is hand, reversed. Nothing is preset. */
export function ChoiceList<Value extends string>(props: ChoiceListProps<Value>) {
  const { label, labelUnseen, choices, chosen, onChoose } = props;
  const name = useId();
  return (
    <fieldset className="choices">
      <legend className={labelUnseen ? "unseen" : undefined}>{label}</legend>
      {choices.map((choice) => (
        <label key={choice.value} className="choice">
          <input
            type="radio"
            name={name}
            value={choice.value}
            checked={choice.value === chosen}
            disabled={choice.disabled}
            onChange={() => onChoose(choice.value)}
          />
          <span>{choice.label}</span>
          {choice.aside !== undefined && <span className="choice-aside">{choice.aside}</span>}
        </label>
      ))}
    </fieldset>
  );
}
