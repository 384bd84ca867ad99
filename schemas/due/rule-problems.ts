import { at, type Problem, problem } from "../shared/problem.ts";
import { parseCivilDate } from "./civil.ts";
import { durationOf, parseDuration } from "./duration.ts";
import { meanDays, PERIODS } from "./mean-days.ts";
import { riskProblems } from "./risk-problems.ts";
import type { RuleContext } from "./rule-context.ts";
import type { IntervalRule, RuleOf } from "./rule-schema.ts";
import { seriesProblems } from "./series-problems.ts";
import { usageProblems } from "./usage-problems.ts";

const longer = (a: string, b: string): boolean => meanDays(a) > meanDays(b);

/** The durations of a rule that may not be nothing, by name. */
function lengths(rule: IntervalRule): Readonly<Record<string, string | undefined>> {
  const { neverAfter } = rule;
  switch (rule.kind) {
    case "from-last-done":
      return { every: rule.every, neverAfter };
    case "anniversary":
      return { every: rule.every, within: rule.within, neverAfter };
    case "spacing":
      return { min: rule.min, max: rule.max, every: rule.every, neverAfter };
    case "on-usage":
      return { orAfter: rule.orAfter, neverAfter };
    case "by-result":
    case "each-period":
    case "recurrence":
    case "on-event":
    case "by-risk":
      return { neverAfter };
  }
}

const shortestOf = (durations: readonly (string | null | undefined)[]): string | undefined =>
  durations
    .flatMap((one) => (typeof one === "string" && parseDuration(one) !== undefined ? [one] : []))
    .reduce<string | undefined>(
      (least, one) => (least === undefined || longer(least, one) ? one : least),
      undefined,
    );

/** The shortest time from one to the next that a rule can ask; undefined where it says none. */
function shortest(rule: IntervalRule, { checklist }: RuleContext): string | undefined {
  switch (rule.kind) {
    case "from-last-done":
    case "anniversary":
      return rule.every;
    case "spacing":
      return rule.every ?? rule.min;
    case "each-period":
      return PERIODS[rule.period];
    case "on-event":
      return rule.within;
    case "on-usage":
      return rule.orAfter;
    case "by-risk":
      return shortestOf(rule.table.rules.map(({ then }) => String(then)));
    case "by-result": {
      const scores = checklist?.document.scores ?? {};
      const bands = Object.hasOwn(scores, rule.score) ? scores[rule.score]?.bands : undefined;
      return shortestOf(bands?.map(({ next }) => next) ?? []);
    }
    case "recurrence":
      return undefined;
  }
}

const sum = (a: string, b: string): string => {
  const [one, other] = [durationOf(a), durationOf(b)];
  return `P${one.months + other.months}M${one.days + other.days}D`;
};

interface Margins {
  readonly [name: string]: string | undefined;
}

/** The time before the due day by its name in the rule, and the time after it. */
function marginsOf(rule: IntervalRule): Margins {
  switch (rule.kind) {
    case "anniversary":
      return { within: rule.within, late: rule.late };
    case "from-last-done":
    case "by-result":
      return { early: rule.early, late: rule.late };
    case "each-period":
    case "spacing":
    case "recurrence":
    case "on-event":
    case "on-usage":
    case "by-risk":
      return {};
  }
}

function windowProblems(margins: Margins, every: string): readonly Problem[] {
  const given = Object.entries(margins).flatMap(([name, margin]) =>
    margin === undefined ? [] : [{ name, margin }],
  );
  const told = (name: string, margin: string) =>
    problem(at("", name), "window-longer-than-interval", { margin, every });
  const each = given.filter(({ margin }) => longer(margin, every));
  if (each.length > 0) return each.map(({ name, margin }) => told(name, margin));
  const [before, after] = given;
  if (before === undefined || after === undefined) return [];
  const both = sum(before.margin, after.margin);
  return longer(both, every) ? [told(after.name, both)] : [];
}

function spacingProblems({ min, max, every }: RuleOf<"spacing">): readonly Problem[] {
  const told = (name: string) => [problem(at("", name), "spacing-out-of-order", { min, max })];
  if (longer(min, max)) return told("max");
  return every !== undefined && (longer(min, every) || longer(every, max)) ? told("every") : [];
}

/** A leap year's; a shorter period of the kind then ends on its last day. */
const DAYS = { week: 7, month: 31, quarter: 92, "half-year": 184, year: 366 } as const;

function periodProblems({ period, day }: RuleOf<"each-period">): readonly Problem[] {
  const most = DAYS[period];
  return day !== undefined && day > most
    ? [problem("/day", "period-has-no-such-day", { day, most })]
    : [];
}

function anchorProblems({ anchor }: RuleOf<"anniversary">): readonly Problem[] {
  return anchor !== undefined && parseCivilDate(anchor) === undefined
    ? [problem("/anchor", "no-such-date", { date: anchor })]
    : [];
}

function kindProblems(rule: IntervalRule, context: RuleContext): readonly Problem[] {
  switch (rule.kind) {
    case "anniversary":
      return anchorProblems(rule);
    case "each-period":
      return periodProblems(rule);
    case "spacing":
      return spacingProblems(rule);
    case "recurrence":
      return seriesProblems(rule);
    case "on-usage":
      return usageProblems(rule, context);
    case "by-risk":
      return riskProblems(rule, context);
    case "from-last-done":
    case "by-result":
    case "on-event":
      return [];
  }
}

/**
 * What a rule asks that cannot be; pointers are into the rule. `first` is free: it may be nothing,
 * and longer than any time that may pass later, as a new vehicle's first test is.
 */
export function ruleProblems(rule: IntervalRule, context: RuleContext = {}): readonly Problem[] {
  const nothing = Object.entries(lengths(rule)).flatMap(([name, length]) =>
    length !== undefined && meanDays(length) === 0
      ? [problem(at("", name), "duration-of-nothing")]
      : [],
  );
  // What is nothing is shorter or longer than all else, which says no more.
  if (nothing.length > 0) return nothing;
  const every = shortest(rule, context);
  const { neverAfter } = rule;
  const tooLong =
    neverAfter !== undefined && every !== undefined && longer(every, neverAfter)
      ? [problem("/neverAfter", "longest-shorter-than-interval", { limit: neverAfter, every })]
      : [];
  const wide = every === undefined ? [] : windowProblems(marginsOf(rule), every);
  return [...kindProblems(rule, context), ...wide, ...tooLong];
}
