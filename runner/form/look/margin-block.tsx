import type { ReactNode } from "react";

/** A block of the marginalia, under its own heading. */
export function MarginBlock({
  title,
  children,
}: {
  readonly title: string;
  readonly children: ReactNode;
}) {
  return (
    <section className="margin-block">
      <h2>{title}</h2>
      <div className="margin-words">{children}</div>
    </section>
  );
}

/** The head of the designer's facing page, over the sheet it shows. */
export function FacingHead({
  title,
  aside,
}: {
  readonly title: string;
  readonly aside?: ReactNode;
}) {
  return (
    <div className="facing-head">
      <h2>{title}</h2>
      {aside !== undefined && <span className="second">{aside}</span>}
    </div>
  );
}

/** Paper on the facing page, under a 3 px rule. */
export function FacingSheet({ children }: { readonly children: ReactNode }) {
  return <div className="facing-sheet">{children}</div>;
}

/** Text that stands in the page's words column: no number, no verdict. */
export function LeafWords({ children }: { readonly children: ReactNode }) {
  return <div className="leaf-words">{children}</div>;
}

/** Name and value in ruled lines. */
export function Facts({
  facts,
}: {
  readonly facts: readonly { readonly name: string; readonly value: ReactNode }[];
}) {
  return (
    <dl>
      {facts.map((fact) => (
        <div key={fact.name} className="fact">
          <dt>{fact.name}</dt>
          <dd>{fact.value}</dd>
        </div>
      ))}
    </dl>
  );
}
