import { type ReactNode, useId } from "react";

export interface Checkable<Value extends string> {
  readonly value: Value;
  readonly label: ReactNode;
}

export interface CheckListProps<Value extends string> {
  /** Read out as the name of the list: the question. */
  readonly label: string;
  readonly options: readonly Checkable<Value>[];
  readonly checked: readonly Value[];
  readonly onCheck: (value: Value, checked: boolean) => void;
}

/** Several of several ruled lines, each with a box that is ticked by hand. Nothing is preset. */
export function CheckList<Value extends string>(props: CheckListProps<Value>) {
  const { label, options, checked, onCheck } = props;
  const name = useId();
  return (
    <fieldset className="checks">
      <legend className="unseen">{label}</legend>
      {options.map(({ value, label: words }) => (
        <label key={value} className="check-line">
          <input
            type="checkbox"
            name={name}
            checked={checked.includes(value)}
            onChange={({ target }) => onCheck(value, target.checked)}
          />
          <TickBox />
          <span>{words}</span>
        </label>
      ))}
    </fieldset>
  );
}

/** A printed square; the stroke through it is drawn only when it is ticked. */
function TickBox() {
  return (
    <svg width="28" height="28" viewBox="0 0 28 28" aria-hidden="true">
      <rect x="3" y="5" width="20" height="20" fill="none" stroke="var(--edge)" strokeWidth="2" />
      <path
        className="tick"
        d="M7 14.5c2 1.6 3.4 3.4 4.6 6C14.6 13.4 18.6 7 25.4 2.6"
        fill="none"
        stroke="var(--hand)"
        strokeWidth="3.6"
        strokeLinecap="round"
      />
    </svg>
  );
}
