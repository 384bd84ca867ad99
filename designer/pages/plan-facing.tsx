import { dayAndMonth, FacingHead, WordLink } from "@roundbook/runner/form";
import type { Plan } from "@roundbook/schemas";
import { useLocation } from "wouter";
import { pl } from "../messages/plan.ts";
import { dayOf } from "./due-standing.tsx";
import { dueAddress, type Scope } from "./plan-scope.tsx";
import { usePlaces } from "./queries.ts";

const told = ({ excused, onReopening, broughtForward }: Plan["closures"][number]): string =>
  [
    excused > 0 && pl("plan.excused", { count: excused }),
    onReopening > 0 && pl("plan.reopening", { count: onReopening }),
    broughtForward > 0 && pl("plan.brought", { count: broughtForward }),
  ]
    .filter(Boolean)
    .join(", ") || pl("plan.untouched");

/** Weeks that ask for more than there is, closures, and the sum of the year. */
export const PlanFacing = ({
  plan,
  scope,
  time,
}: {
  readonly plan: Plan;
  readonly scope: Scope;
  time(minutes: number): string;
}) => {
  const [, navigate] = useLocation();
  const names = new Map((usePlaces().data ?? []).map(({ id, name }) => [id, name]));
  const today = dayOf(plan.from);
  const checks = plan.weeks.reduce((sum, week) => sum + week.checks, 0);
  const minutes = plan.weeks.reduce((sum, week) => sum + week.minutes, 0);
  return (
    <>
      <FacingHead title={pl("plan.heavy")} />
      {plan.heavy.length === 0 && <p className="second">{pl("plan.no-heavy")}</p>}
      <ul className="plan-heavy">
        {plan.heavy.map(({ week, over, mayComeForward, mayWait }) => (
          <li key={week}>
            <p className="plan-heavy-head">
              <WordLink
                href={`/designer${dueAddress(scope, week)}`}
                onFollow={() => navigate(dueAddress(scope, week))}
              >
                {dayAndMonth(dayOf(week), today)}
              </WordLink>
              <strong className="danger">{pl("plan.over", { time: time(over) })}</strong>
            </p>
            <p className="second">
              {[
                mayComeForward > 0 && pl("plan.forward", { count: mayComeForward }),
                mayWait > 0 && pl("plan.wait", { count: mayWait }),
              ]
                .filter(Boolean)
                .join(" ") || pl("plan.stays")}
            </p>
          </li>
        ))}
      </ul>
      <FacingHead title={pl("plan.closures")} />
      {plan.closures.length === 0 && <p className="second">{pl("plan.no-closures")}</p>}
      {plan.closures.map((closure) => (
        <p key={`${closure.site} ${closure.from} ${closure.reason}`} className="second">
          {pl("plan.closure", {
            site: names.get(closure.site) ?? "",
            from: dayAndMonth(dayOf(closure.from), today),
            to: dayAndMonth(dayOf(closure.to), today),
            reason: closure.reason,
            told: told(closure),
          })}
        </p>
      ))}
      <FacingHead title={pl("plan.year")} />
      <p className="second">
        {pl("plan.sum", { checks: pl("plan.checks", { count: checks }), time: time(minutes) })}
      </p>
    </>
  );
};
