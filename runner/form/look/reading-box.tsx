import type { ComponentProps, ReactNode, Ref } from "react";

export interface ReadingBoxProps
  extends Omit<ComponentProps<"input">, "className" | "type" | "ref" | "aria-label"> {
  /** Read out as the name of the box: the question. */
  readonly label: string;
  readonly unit: ReactNode;
  /** Silences the screen keyboard where the pad stands in for it. */
  readonly pad?: boolean;
  readonly ref?: Ref<HTMLInputElement>;
}

/** The field a reading is written in; nothing is ever prefilled, figures stay the typed text. */
export function ReadingBox({ label, unit, pad, ...input }: ReadingBoxProps) {
  return (
    <div className="reading">
      <input
        autoComplete="off"
        autoCorrect="off"
        spellCheck={false}
        enterKeyHint="next"
        {...input}
        type="text"
        inputMode={pad ? "none" : "text"}
        aria-label={label}
      />
      <span className="reading-unit">{unit}</span>
    </div>
  );
}

/** The box before its time: dashed, closed, saying when it opens. */
export function ClosedReadingBox({
  opens,
  unit,
}: {
  readonly opens: string;
  readonly unit: ReactNode;
}) {
  return (
    <div className="reading reading-closed">
      <span className="reading-opens">{opens}</span>
      <span className="reading-unit">{unit}</span>
    </div>
  );
}

/** Under the limit line: how the limit came about. */
export function Equation({ children }: { readonly children: ReactNode }) {
  return <p className="equation">{children}</p>;
}
