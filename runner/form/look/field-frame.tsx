import type { ReactNode } from "react";

export interface FieldWords {
  readonly label: ReactNode;
  readonly help?: ReactNode;
  readonly error?: ReactNode;
  /** On the line, after the answer: a unit, "none yet", a word button. */
  readonly trail?: ReactNode;
}

/** Label above, the line, then help and error, tied to the control by id. */
export function FieldFrame({
  id,
  label,
  help,
  error,
  trail,
  children,
}: FieldWords & { readonly id: string; readonly children: ReactNode }) {
  return (
    <div className="field">
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <div className="field-line">
        {children}
        {typeof trail === "string" ? <span className="field-trail">{trail}</span> : trail}
      </div>
      {help !== undefined && (
        <p className="field-help" id={`${id}-help`}>
          {help}
        </p>
      )}
      <div aria-live="polite">
        {error !== undefined && (
          <p className="field-error" id={`${id}-error`}>
            {error}
          </p>
        )}
      </div>
    </div>
  );
}

/** The attributes that tie a control to its words. */
export function describedBy(id: string, { help, error }: FieldWords) {
  const ids = [error !== undefined && `${id}-error`, help !== undefined && `${id}-help`].filter(
    Boolean,
  );
  return {
    id,
    "aria-invalid": error !== undefined || undefined,
    "aria-describedby": ids.length > 0 ? ids.join(" ") : undefined,
  };
}

/** Two short fields beside each other. */
export function FieldPair({ children }: { readonly children: ReactNode }) {
  return <div className="field-pair">{children}</div>;
}
