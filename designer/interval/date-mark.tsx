import type { CivilDate } from "@roundbook/schemas";

const WIDE = 80;
const [LEFT, RIGHT, SHORT] = [3, 77, 54];

/** A window of a series: bars are its ends, dotted is where the plain date would fall. 80 × 14 px. */
export const DateMark = ({
  earliest,
  latest,
  plain,
}: {
  readonly earliest: CivilDate;
  readonly latest: CivilDate;
  readonly plain?: CivilDate;
}) => {
  const after = plain !== undefined && plain > latest;
  const before = plain !== undefined && plain < earliest;
  const from = before ? WIDE - SHORT : LEFT;
  const to = after ? SHORT : RIGHT;
  const single = earliest === latest;
  return (
    <svg
      className="due-mark"
      width={WIDE}
      height="14"
      viewBox={`0 0 ${WIDE} 14`}
      aria-hidden="true"
    >
      {!single && <path d={`M${from} 7H${to}`} stroke="var(--edge)" strokeWidth={1.5} />}
      {!single && <path d={`M${from} 1V13`} stroke="var(--ink)" strokeWidth={3} />}
      {(!single || !before) && <path d={`M${to} 1V13`} stroke="var(--ink)" strokeWidth={3} />}
      {single && before && <path d={`M${from} 1V13`} stroke="var(--ink)" strokeWidth={3} />}
      {after && <Dotted from={to} to={RIGHT} end={RIGHT} />}
      {before && <Dotted from={LEFT} to={from} end={LEFT} />}
    </svg>
  );
};

const Dotted = ({ from, to, end }: { from: number; to: number; end: number }) => (
  <>
    <path d={`M${from} 7H${to}`} stroke="var(--edge)" strokeWidth={1.5} strokeDasharray="2 2" />
    <path d={`M${end} 4V10`} stroke="var(--edge)" strokeWidth={2} />
  </>
);
