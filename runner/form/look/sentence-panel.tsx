import type { KeyboardEvent, ReactNode } from "react";

/** A rule written as sentences whose blanks are opened and filled in place. */
export function SentencePanel({
  label,
  children,
}: {
  readonly label?: string;
  readonly children: ReactNode;
}) {
  return (
    <section className="sentences" aria-label={label}>
      {children}
    </section>
  );
}

export interface SentenceProps {
  /** The word in the margin: "asks", "fails", "every". */
  readonly verb?: string;
  /** The editor of the open blank, under the sentence. */
  readonly opened?: ReactNode;
  readonly children: ReactNode;
}

export function Sentence({ verb, opened, children }: SentenceProps) {
  return (
    <div className="sentence">
      <span className="sentence-verb">{verb}</span>
      <div className="sentence-words">{children}</div>
      {opened !== undefined && <div className="blank-opened">{opened}</div>}
    </div>
  );
}

export interface BlankProps {
  readonly expanded?: boolean;
  readonly onPress: () => void;
  /** Read out in place of `children` where those do not say what is asked: "Basis, not written". */
  readonly label?: string;
  readonly children: ReactNode;
}

/** A dotted violet blank; `children` is what stands in it now. */
export function Blank({ expanded, onPress, label, children }: BlankProps) {
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== "Enter" && event.key !== " ") return;
    event.preventDefault();
    onPress();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button element cannot wrap within a sentence.
    <span
      role="button"
      tabIndex={0}
      className="blank"
      aria-expanded={expanded ?? false}
      aria-label={label}
      onClick={onPress}
      onKeyDown={onKeyDown}
    >
      {children}
    </span>
  );
}
