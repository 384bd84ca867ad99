/** Hours of a week against the time there is: the bar is the limit, the dot what is asked. */
export const PlanBar = ({
  minutes,
  most,
  bar,
}: {
  readonly minutes: number;
  readonly most: number;
  readonly bar: number | null;
}) => {
  const at = (value: number): number => 6 + (value / most) * 100;
  const over = bar !== null && minutes > bar;
  const end = bar === null ? 106 : at(bar);
  return (
    <svg className="plan-bar" viewBox="0 0 112 14" aria-hidden="true">
      <line x1="4" y1="7" x2={Math.max(end, at(minutes))} y2="7" className="plan-thread" />
      <line
        x1="4"
        y1="7"
        x2={at(Math.min(minutes, bar ?? minutes))}
        y2="7"
        className="plan-stroke"
      />
      {bar !== null && <line x1={end} y1="1" x2={end} y2="13" className="plan-limit" />}
      {over ? (
        <path d={`M${at(minutes)} 1.5l5.5 5.5-5.5 5.5-5.5-5.5z`} className="plan-over" />
      ) : (
        <circle cx={at(minutes)} cy="7" r="4.2" className="plan-dot" />
      )}
    </svg>
  );
};
