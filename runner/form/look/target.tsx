import type { ReactNode } from "react";
import { type Follow, followWith } from "./follow.ts";

export interface TargetProps {
  readonly href?: string;
  readonly onFollow?: Follow;
  /** Used without `href`: the target is then a button. */
  readonly onPress?: () => void;
}

/** The whole of a row as one target: a link, a button, or plain when it leads nowhere. */
export function Target({
  href,
  onFollow,
  onPress,
  className,
  expanded,
  children,
}: TargetProps & {
  readonly className: string;
  readonly expanded?: boolean;
  readonly children: ReactNode;
}) {
  if (href !== undefined) {
    return (
      <a className={className} href={href} onClick={followWith(href, onFollow)}>
        {children}
      </a>
    );
  }
  if (onPress) {
    return (
      <button type="button" className={className} onClick={onPress} aria-expanded={expanded}>
        {children}
      </button>
    );
  }
  return <div className={className}>{children}</div>;
}
