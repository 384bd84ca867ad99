import { FieldPair, LineField, useMessages, WordButton } from "@roundbook/runner/form";
import type { Problem } from "@roundbook/schemas";
import { ro } from "../messages/rounds.ts";

export interface Time {
  readonly from: string;
  readonly to: string;
  readonly reason: string;
}

/** Members of a calendar that are times, which its problems point into. */
export type TimesName = "closures" | "seasons";

const EMPTY: Time = { from: "", to: "", reason: "" };
export const isWritten = ({ from, to, reason }: Time): boolean =>
  `${from}${to}${reason}`.trim() !== "";

/** Times that a site is closed, a line each, with what is wrong at its own field. */
export const Times = ({
  name,
  title,
  kind,
  times,
  wrong,
  onChange,
}: {
  readonly name: TimesName;
  readonly title: string;
  readonly kind: "date" | "text";
  readonly times: readonly Time[];
  readonly wrong: readonly Problem[];
  /** `at` is the line that was written in; undefined when lines moved. */
  onChange(times: readonly Time[], at?: number): void;
}) => {
  const { say } = useMessages();
  const help = kind === "text" ? ro("closed.month-day") : undefined;
  const errorAt = (at: number, member: string): string | undefined => {
    const here = wrong.filter(({ pointer }) => pointer === `/${name}/${at}${member}`);
    return here.length === 0 ? undefined : here.map(say).join(" ");
  };
  return (
    <fieldset className="closed-times">
      <legend>{title}</legend>
      {times.map((time, at) => {
        const set = (change: Partial<Time>) =>
          onChange(
            times.map((one, index) => (index === at ? { ...one, ...change } : one)),
            at,
          );
        const whole = errorAt(at, "");
        return (
          // Lines have no name of their own: their place is what they are.
          <div key={at} className="desk-line">
            <FieldPair>
              <LineField
                label={ro("closed.from")}
                type={kind}
                help={help}
                value={time.from}
                error={errorAt(at, "/from")}
                onChange={(event) => set({ from: event.target.value })}
              />
              <LineField
                label={ro("closed.to")}
                type={kind}
                help={help}
                value={time.to}
                error={errorAt(at, "/to")}
                onChange={(event) => set({ to: event.target.value })}
              />
            </FieldPair>
            <LineField
              label={ro("closed.reason")}
              value={time.reason}
              error={errorAt(at, "/reason")}
              onChange={(event) => set({ reason: event.target.value })}
            />
            {whole && (
              <p role="alert" className="danger">
                {whole}
              </p>
            )}
            <WordButton onClick={() => onChange(times.filter((_, index) => index !== at))}>
              {ro("closed.remove")}
            </WordButton>
          </div>
        );
      })}
      <WordButton onClick={() => onChange([...times, EMPTY], times.length)}>
        {ro("closed.add")}
      </WordButton>
    </fieldset>
  );
};
