import type { ComponentProps, ReactNode } from "react";
import { classes } from "./classes.ts";
import { type Follow, followWith } from "./follow.ts";

interface WordLook {
  /** Second voice, for a word that is not the thing to do here. */
  readonly quiet?: boolean;
  readonly children: ReactNode;
}

/** An underlined word that leads somewhere. */
export function WordLink({
  href,
  onFollow,
  quiet,
  children,
}: WordLook & { readonly href: string; readonly onFollow?: Follow }) {
  return (
    <a
      className={classes("word", quiet && "word-quiet")}
      href={href}
      onClick={followWith(href, onFollow)}
    >
      <span>{children}</span>
    </a>
  );
}

export interface WordButtonProps
  extends WordLook,
    Omit<ComponentProps<"button">, "className" | "children"> {
  /** One of several kinds in a line: the chosen one under a 5 px line. */
  readonly chosen?: boolean;
}

/** An underlined word that does something. */
export function WordButton({ quiet, chosen, children, type = "button", ...rest }: WordButtonProps) {
  return (
    <button
      {...rest}
      type={type}
      aria-pressed={chosen}
      className={classes("word", quiet && "word-quiet", chosen && "word-chosen")}
    >
      <span>{children}</span>
    </button>
  );
}

/** Words in a line, wrapping. */
export function WordList({ children }: { readonly children: ReactNode }) {
  return <div className="word-list">{children}</div>;
}
