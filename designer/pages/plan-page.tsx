import {
  Blank,
  Empty,
  Loading,
  MONTHS,
  StateLine,
  TitleBlock,
  WordButton,
  WordLink,
} from "@roundbook/runner/form";
import type { Plan } from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useLocation } from "wouter";
import { d } from "../messages/desk.ts";
import { pl } from "../messages/plan.ts";
import { hoursOf, monthsOf, type PlanMonth } from "../model/plan-months.ts";
import { CannotRead } from "./cannot-read.tsx";
import { getJson } from "./client.ts";
import { DeskPage, NarrowOnly } from "./desk-page.tsx";
import { PlanBar } from "./plan-bar.tsx";
import { PlanFacing } from "./plan-facing.tsx";
import { dueAddress, PlanScope, scopeQuery, scopeWords, useScope } from "./plan-scope.tsx";

const time = (minutes: number): string => pl("time.hours", hoursOf(minutes));

const Month = ({ month, plan }: { readonly month: PlanMonth; readonly plan: Plan }) => {
  const most = Math.max(...plan.weeks.map(({ minutes }) => minutes), plan.minutesAWeek ?? 0, 1);
  const name = MONTHS[month.month - 1] ?? "";
  return (
    <section className="plan-month">
      <h2>
        <span className="plan-month-name">
          {`${name.slice(0, 3)}`}
          <span className="plan-month-rest">{name.slice(3)}</span>
        </span>{" "}
        <span className="plan-month-year">{month.year}</span>
        <span className="plan-month-sum">{pl("plan.checks", { count: month.checks })}</span>
      </h2>
      <ol>
        {month.weeks.map((week) => {
          const over = plan.minutesAWeek !== null && week.minutes > plan.minutesAWeek;
          return (
            <li key={week.week} className="plan-week">
              <span className="plan-day">{week.day}</span>
              <span className={over ? "plan-time danger" : "plan-time"}>{time(week.minutes)}</span>
              <PlanBar minutes={week.minutes} most={most} bar={plan.minutesAWeek} />
              <span className="plan-checks">{pl("plan.checks", { count: week.checks })}</span>
            </li>
          );
        })}
      </ol>
    </section>
  );
};

/** What is coming in twelve months, by week, against the time there is. */
export const PlanPage = () => {
  const [, navigate] = useLocation();
  const [turned, setTurned] = useState(false);
  const [choosing, setChoosing] = useState(false);
  const { scope, setScope, choices } = useScope();
  const plan = useQuery({
    queryKey: ["plan", scope],
    queryFn: () => getJson<Plan>(`/api/plan${scopeQuery(scope)}`),
  });
  const { data } = plan;
  const due = dueAddress(scope);
  const none = data?.weeks.every(({ checks }) => checks === 0);
  return (
    <DeskPage
      current="plan"
      facing={data && <PlanFacing plan={data} scope={scope} time={time} />}
      turned={turned}
      onTurn={() => setTurned(false)}
    >
      <TitleBlock
        title={pl("plan.title")}
        actionsAbove
        second={
          <>
            {`${pl("plan.by-week")} `}
            <Blank expanded={choosing} onPress={() => setChoosing(!choosing)}>
              {scopeWords(scope, choices)}
            </Blank>
            {". "}
            {data &&
              (data.minutesAWeek === null
                ? pl("plan.no-bar")
                : pl("plan.bar", {
                    who: data.keepers.join(", "),
                    count: data.keepers.length,
                    time: time(data.minutesAWeek),
                  }))}
          </>
        }
        actions={
          <>
            <NarrowOnly>
              <WordButton onClick={() => setTurned(true)}>{pl("plan.facing")}</WordButton>
            </NarrowOnly>
            <WordLink href={`/designer${due}`} onFollow={() => navigate(due)}>
              {pl("plan.due")}
            </WordLink>
            <WordButton onClick={() => window.print()}>{pl("plan.print")}</WordButton>
          </>
        }
      />
      {choosing && (
        <PlanScope
          scope={scope}
          choices={choices}
          onChoose={(chosen) => {
            setScope(chosen);
            setChoosing(false);
          }}
        />
      )}
      {plan.isPending && <Loading label={d("app.opening")} />}
      {plan.isError && <CannotRead error={plan.error} onAgain={() => void plan.refetch()} />}
      {data && data.overdue.checks > 0 && (
        <StateLine>
          {pl("plan.overdue", { count: data.overdue.checks, time: time(data.overdue.minutes) })}
        </StateLine>
      )}
      {none ? (
        <Empty sentence={pl("plan.none")}>
          <p>{pl("plan.none-next")}</p>
        </Empty>
      ) : (
        data && (
          <div className="plan">
            {monthsOf(data.weeks).map((month) => (
              <Month key={`${month.year} ${month.month}`} month={month} plan={data} />
            ))}
          </div>
        )
      )}
    </DeskPage>
  );
};
