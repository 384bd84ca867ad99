import type { ComponentProps, KeyboardEvent, Ref } from "react";

export interface StepperProps
  extends Omit<ComponentProps<"input">, "className" | "type" | "ref" | "aria-label"> {
  /** Read out as the name of the box: the question. */
  readonly label: string;
  readonly fewer: { readonly label: string; readonly onPress: (() => void) | undefined };
  readonly more: { readonly label: string; readonly onPress: (() => void) | undefined };
  readonly ref?: Ref<HTMLInputElement>;
}

/** A whole number, typed or stepped; the arrow keys step too. Nothing is ever prefilled. */
export function Stepper({ label, fewer, more, ...input }: StepperProps) {
  const onKeyDown = (event: KeyboardEvent) => {
    const step =
      event.key === "ArrowUp" ? more.onPress : event.key === "ArrowDown" ? fewer.onPress : null;
    if (step === null) return;
    event.preventDefault();
    step?.();
  };
  return (
    <div className="stepper">
      <button
        type="button"
        aria-label={fewer.label}
        disabled={fewer.onPress === undefined}
        onClick={fewer.onPress}
      >
        −
      </button>
      <div className="reading">
        <input
          autoComplete="off"
          enterKeyHint="next"
          {...input}
          type="text"
          inputMode="numeric"
          aria-label={label}
          onKeyDown={onKeyDown}
        />
      </div>
      <button
        type="button"
        aria-label={more.label}
        disabled={more.onPress === undefined}
        onClick={more.onPress}
      >
        +
      </button>
    </div>
  );
}
