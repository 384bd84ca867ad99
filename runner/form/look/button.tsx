import type { ComponentProps, ReactNode } from "react";
import { classes } from "./classes.ts";
import { type Follow, followWith } from "./follow.ts";

export interface ButtonProps extends Omit<ComponentProps<"button">, "className"> {
  readonly kind?: "primary" | "secondary";
}

export function Button({ kind = "secondary", type = "button", ...rest }: ButtonProps) {
  return (
    <button
      {...rest}
      type={type}
      className={classes("button", kind === "primary" && "button-primary")}
    />
  );
}

export function ButtonLink({
  kind = "secondary",
  href,
  onFollow,
  children,
}: {
  readonly kind?: "primary" | "secondary";
  readonly href: string;
  readonly onFollow?: Follow;
  readonly children: ReactNode;
}) {
  return (
    <a
      className={classes("button", kind === "primary" && "button-primary")}
      href={href}
      onClick={followWith(href, onFollow)}
    >
      {children}
    </a>
  );
}

/** Buttons side by side, the primary one wider; `even` gives all the same width. */
export function Buttons({
  even,
  children,
}: {
  readonly even?: boolean;
  readonly children: ReactNode;
}) {
  return <div className={classes("buttons", even && "buttons-even")}>{children}</div>;
}
