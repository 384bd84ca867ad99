import type { ComponentProps, ReactNode } from "react";

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

export interface BlankProps extends Omit<ComponentProps<"button">, "className" | "type"> {
  readonly expanded?: boolean;
}

/** A dotted violet blank; `children` is what stands in it now. */
export function Blank({ expanded, ...button }: BlankProps) {
  return <button {...button} type="button" className="blank" aria-expanded={expanded ?? false} />;
}
