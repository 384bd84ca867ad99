import type { ReactNode } from "react";

export interface PlaceHeadingProps {
  readonly number?: string;
  readonly title: string;
  /** At the right: "2 of 4", "part 1 of 3", "tester 9001". */
  readonly aside?: ReactNode;
  readonly level?: 2 | 3;
  readonly id?: string;
}

export function PlaceHeading({ number, title, aside, level = 2, id }: PlaceHeadingProps) {
  const Heading = `h${level}` as const;
  return (
    <div className="place">
      <span className="place-number">{number}</span>
      <Heading id={id}>{title}</Heading>
      {aside !== undefined && <span className="place-aside">{aside}</span>}
    </div>
  );
}
