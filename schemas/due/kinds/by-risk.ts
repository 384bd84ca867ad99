import type { TableDefinition } from "../../checklist/meta-schema.ts";
import type { Failure } from "../../formulas/engine-type.ts";
import type { CivilDate } from "../../shared/ids.ts";
import type { Explanation } from "../../shared/problem.ts";
import { isLookUpFailure, type LookUp, lookUp } from "../../tables/look-up.ts";
import { addDuration, parseDuration, subtractDuration } from "../duration.ts";
import type { DueFacts } from "../facts.ts";
import type { RuleOf } from "../rule-schema.ts";
import type { DoneRecord } from "../window.ts";
import { explain, facts, type Span, undecided } from "./span.ts";

type Rule = RuleOf<"by-risk">;

const NAMED = "asset.";

/** The particular that an input of a risk table reads. */
export const factorOf = (input: string): string => {
  const name = input.trim();
  return name.startsWith(NAMED) ? name.slice(NAMED.length) : name;
};

interface Every {
  readonly every: string;
  readonly factors: readonly string[];
  readonly reason: string;
}

/** Factors come in few combinations, and an estate asks for each of them many times. */
const KEPT = 1000;
const kept = new WeakMap<TableDefinition, Map<string, LookUp | Failure>>();

function found(table: TableDefinition, values: readonly (string | number | boolean)[]) {
  const known = kept.get(table) ?? new Map<string, LookUp | Failure>();
  const key = JSON.stringify(values);
  const outcome = known.get(key) ?? lookUp(table, values);
  if (known.size >= KEPT) known.clear();
  kept.set(table, known.set(key, outcome));
  return outcome;
}

/** What the particulars ask for, or why it cannot be told. */
function everyOf({ table }: Rule, { particulars = {} }: DueFacts): Every | Explanation {
  const names = table.inputs.map(factorOf);
  const missing = names.filter((name) => !Object.hasOwn(particulars, name));
  if (missing.length > 0) return explain("needs-particulars", { names: missing });
  const values = names.map((name) => particulars[name] ?? "");
  const factors = names.map((name, at) => `${name}: ${String(values[at])}`);
  const outcome = found(table, values);
  if (isLookUpFailure(outcome)) {
    const code = outcome.code === "rules-conflict" ? "risk-rules-conflict" : "no-risk-rule";
    return explain(code, { factors });
  }
  const every = String(outcome.value);
  // A table that was in force before its outcomes were checked asks for nothing that can be told.
  if (parseDuration(every) === undefined) return explain("no-risk-rule", { factors });
  return { every, factors, reason: table.rules[outcome.rule]?.basis ?? "" };
}

/** The interval that the particulars ask for. */
export function byRisk(rule: Rule, known: DueFacts, record: DoneRecord): Span {
  const asked = everyOf(rule, known);
  if ("code" in asked) return undecided(record, asked);
  const due = addDuration(record.on, asked.every);
  return {
    record,
    earliest: rule.early === undefined ? due : subtractDuration(due, rule.early),
    due,
    latest: rule.late === undefined ? due : addDuration(due, rule.late),
    why: explain("by-risk", { ...asked, ...facts(record) }),
  };
}

/** Never done, and how often it has to be done cannot be told; undefined where it can. */
export function firstByRisk(rule: Rule, known: DueFacts): Span | undefined {
  const asked = everyOf(rule, known);
  if (!("code" in asked)) return undefined;
  const day: CivilDate = known.registered;
  return { record: null, earliest: day, due: day, latest: day, why: asked, undecided: true };
}
