import type { CSSProperties, ReactNode } from "react";
import { classes } from "./classes.ts";
import { Dock } from "./dock.tsx";

export interface PageProps {
  /** The contents; without it the page stands alone, as sign-in does. */
  readonly contents?: ReactNode;
  /** What is docked at the foot: scan line, pad, buttons, problems. */
  readonly dock?: ReactNode;
  /** Blocks at the right of a desktop page, after the page on a phone. */
  readonly marginalia?: ReactNode;
  /** The designer's right-hand page, which shows what the left one does. */
  readonly facing?: ReactNode;
  readonly facingWidth?: "narrow" | "middle" | "wide";
  readonly designer?: boolean;
  readonly children: ReactNode;
}

const facingWidths = { narrow: "271px", middle: "420px", wide: "463px" } as const;

/** A page of the round book: one ruled column between its margins. */
export function Page(props: PageProps) {
  const { contents, dock, marginalia, facing, facingWidth = "middle", designer, children } = props;
  return (
    <div
      className={classes(
        "book",
        designer && "book-designer",
        facing !== undefined && "book-faced",
        contents === undefined && "book-alone",
      )}
      style={{ "--facing-width": facingWidths[facingWidth] } as CSSProperties}
    >
      {contents}
      <main className="leaf">{children}</main>
      {marginalia !== undefined && <aside className="marginalia">{marginalia}</aside>}
      {facing !== undefined && <aside className="facing">{facing}</aside>}
      {dock !== undefined && <Dock>{dock}</Dock>}
    </div>
  );
}

/** A page inside a page, drawn as on a phone: the designer's trial. */
export function FramedPage({
  label,
  dock,
  children,
}: {
  readonly label: string;
  readonly dock?: ReactNode;
  readonly children: ReactNode;
}) {
  return (
    <section className="framed" aria-label={label}>
      <div className="leaf">{children}</div>
      {dock !== undefined && <div className="dock">{dock}</div>}
    </section>
  );
}
