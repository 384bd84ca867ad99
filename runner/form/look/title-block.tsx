import type { ReactNode } from "react";
import { classes } from "./classes.ts";
import { phoneMargin, widerThan } from "./margin-number.ts";

export interface TitleBlockProps {
  /** What the page is called by: an asset's, a site's or a checklist's number. */
  readonly number?: string;
  /** The number was written by this person and not yet by the book. */
  readonly numberWritten?: boolean;
  readonly title: string;
  readonly second?: ReactNode;
  readonly actions?: ReactNode;
  /** The designer's pages hold their actions in a line of their own. */
  readonly actionsAbove?: boolean;
  /** `cover` is the first page and the sign-in. */
  readonly size?: "page" | "fill" | "cover";
  /** 2 for a page shown inside another. */
  readonly level?: 1 | 2;
}

export function TitleBlock(props: TitleBlockProps) {
  const Heading = `h${props.level ?? 1}` as const;
  const { number, numberWritten, title, second, actions, actionsAbove, size = "page" } = props;
  return (
    <header
      className={classes(
        "title",
        size !== "page" && `title-${size}`,
        actionsAbove && "title-above",
      )}
      data-wide-number={number !== undefined && widerThan(phoneMargin, number, 19) ? "" : undefined}
    >
      <div className={classes("title-number", numberWritten && "written")}>{number}</div>
      <div className="title-words">
        <Heading>{title}</Heading>
        {second !== undefined && <p>{second}</p>}
      </div>
      {actions !== undefined && <div className="title-actions">{actions}</div>}
    </header>
  );
}
