import type { CivilDate } from "../shared/ids.ts";
import { at, type Problem, problem } from "../shared/problem.ts";
import { parseCivilDate } from "./civil.ts";
import { addDuration, subtractDuration } from "./duration.ts";
import { occurrences } from "./rrule/occurrences.ts";
import { parseRrule } from "./rrule/parse-rrule.ts";
import type { Rrule, RruleEnd } from "./rrule/rrule.ts";
import type { RuleOf } from "./rule-schema.ts";

type Rule = RuleOf<"recurrence">;

/** Rules come round well within so many dates and so many days. */
const MOST = 1000;
const LONGEST = 36_525;

interface Series {
  readonly days: readonly CivilDate[];
  /** Why it ends; null where it was not followed to its end. */
  readonly ended: RruleEnd | null;
}

function beginning(rule: Rrule, start: CivilDate): Series {
  const days: CivilDate[] = [];
  const series = occurrences(rule, start);
  while (days.length < MOST && (days.at(-1) ?? start) < start + LONGEST) {
    const next = series.next();
    if (next.done) return { days, ended: next.value };
    days.push(next.value);
  }
  return { days, ended: null };
}

/** Margins under which the windows of two dates in a row overlap, and a longest time under which none follows. */
function gapProblems(rule: Rule, days: readonly CivilDate[]): readonly Problem[] {
  const { early = "P0D", late = "P0D", neverAfter } = rule;
  const found = new Map<string, Problem>();
  let least = Number.POSITIVE_INFINITY;
  let allPast = neverAfter !== undefined && days.length > 1;
  for (let index = 1; index < days.length; index += 1) {
    const [a, b] = [days[index - 1], days[index]];
    if (a === undefined || b === undefined) break;
    least = Math.min(least, b - a);
    const gap = `P${b - a}D`;
    const report = (name: string, margin: string) => {
      if (!found.has(name))
        found.set(name, problem(at("", name), "margin-longer-than-gap", { margin, gap }));
    };
    const [opens, closes] = [subtractDuration(b, early), addDuration(a, late)];
    if (opens < a) report("early", early);
    else if (closes > b) report("late", late);
    else if (opens < closes) report("late", `P${closes - a + (b - opens)}D`);
    if (neverAfter !== undefined && addDuration(a, neverAfter) >= b) allPast = false;
  }
  const problems = [...found.values()];
  return allPast && neverAfter !== undefined
    ? [
        ...problems,
        problem("/neverAfter", "longest-shorter-than-interval", {
          limit: neverAfter,
          every: `P${least}D`,
        }),
      ]
    : problems;
}

/** What a recurrence asks that cannot be; pointers are into the rule, places into its RRULE. */
export function seriesProblems(rule: Rule): readonly Problem[] {
  const parsed = parseRrule(rule.rrule);
  const start = parseCivilDate(rule.start);
  const problems = [
    ...(parsed.ok ? [] : parsed.problems.map((one) => ({ ...one, pointer: "/rrule" }))),
    ...(start === undefined ? [problem("/start", "no-such-date", { date: rule.start })] : []),
  ];
  if (!parsed.ok || start === undefined) return problems;
  const { days, ended } = beginning(parsed.value, start);
  if (days.length === 0) return [problem("/rrule", "rrule-gives-no-day", { reason: ended })];
  return gapProblems(rule, days);
}
