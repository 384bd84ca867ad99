import { type ComponentProps, useId } from "react";
import { describedBy, FieldFrame, type FieldWords } from "./field-frame.tsx";

/** All input attributes and `ref` pass through, so `register()` spreads into it. */
export type LineFieldProps = FieldWords &
  Omit<ComponentProps<"input">, "className" | "style"> & {
    /** A picker prints its own blanks: they are no answer, and not in hand. */
    readonly "data-empty"?: boolean;
  };

export function LineField({ label, help, error, trail, id, ...input }: LineFieldProps) {
  const own = useId();
  const words = { label, help, error, trail };
  return (
    <FieldFrame id={id ?? own} {...words}>
      <input {...input} {...describedBy(id ?? own, words)} />
    </FieldFrame>
  );
}

export type AreaFieldProps = FieldWords & Omit<ComponentProps<"textarea">, "className" | "style">;

/** A line that grows with the words. */
export function AreaField({ label, help, error, trail, id, rows = 1, ...area }: AreaFieldProps) {
  const own = useId();
  const words = { label, help, error, trail };
  return (
    <FieldFrame id={id ?? own} {...words}>
      <textarea {...area} rows={rows} {...describedBy(id ?? own, words)} />
    </FieldFrame>
  );
}

export interface SelectOption {
  readonly value: string;
  readonly label: string;
  readonly disabled?: boolean;
}

export type SelectFieldProps = FieldWords &
  Omit<ComponentProps<"select">, "className" | "style" | "children"> & {
    readonly options: readonly SelectOption[];
    /** The words of the empty choice; without it nothing empty is offered. */
    readonly none?: string;
  };

export function SelectField({
  label,
  help,
  error,
  trail,
  id,
  options,
  none,
  ...select
}: SelectFieldProps) {
  const own = useId();
  const words = { label, help, error, trail };
  return (
    <FieldFrame id={id ?? own} {...words}>
      <select {...select} {...describedBy(id ?? own, words)}>
        {none !== undefined && <option value="">{none}</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value} disabled={option.disabled}>
            {option.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}
