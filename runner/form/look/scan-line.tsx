import { type FormEvent, type Ref, useId } from "react";
import { classes } from "./classes.ts";

export interface ScanLineProps {
  /** In the margin: "No.", "Find". */
  readonly margin: string;
  readonly placeholder: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly onSubmit?: () => void;
  /** The word at its end: Camera, "On a day…". */
  readonly action?: { readonly label: string; readonly onPress: () => void };
  readonly leftHanded?: boolean;
  /** Ruled into the page under the title, where it stands on a desktop. */
  readonly inline?: boolean;
  readonly ref?: Ref<HTMLInputElement>;
}

export function ScanLine(props: ScanLineProps) {
  const { margin, placeholder, value, onChange, onSubmit, action, leftHanded, inline, ref } = props;
  const id = useId();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    onSubmit?.();
  };
  return (
    <form
      className={classes("scan", leftHanded && "scan-left", inline && "scan-inline")}
      onSubmit={submit}
    >
      <label htmlFor={id}>
        {margin}
        <span className="unseen"> {placeholder}</span>
      </label>
      <input
        id={id}
        ref={ref}
        type="text"
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        enterKeyHint="search"
        placeholder={placeholder}
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
      {action && (
        <button type="button" onClick={action.onPress}>
          {action.label}
        </button>
      )}
    </form>
  );
}
