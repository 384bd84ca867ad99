import type { Particulars } from "../../checklist/answer-types.ts";
import type { TableDefinition } from "../../checklist/meta-schema.ts";
import type { Scalar } from "../../formulas/engine-type.ts";
import type { CivilDate } from "../../shared/ids.ts";
import type { Explanation } from "../../shared/problem.ts";
import { isLookUpFailure, lookUp } from "../../tables/look-up.ts";
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

function lookUpEvery(table: TableDefinition, values: readonly Scalar[]): Every | Explanation {
  const factors = table.inputs.map((input, at) => `${factorOf(input)}: ${String(values[at])}`);
  const outcome = lookUp(table, values);
  if (isLookUpFailure(outcome)) {
    const code = outcome.code === "rules-conflict" ? "risk-rules-conflict" : "no-risk-rule";
    return explain(code, { factors });
  }
  const every = String(outcome.value);
  // A table that was in force before its outcomes were checked asks for nothing that can be told.
  if (parseDuration(every) === undefined) return explain("no-risk-rule", { factors });
  return { every, factors, reason: table.rules[outcome.rule]?.basis ?? "" };
}

interface Known {
  readonly names: readonly string[];
  readonly every: Map<string, Every | Explanation>;
}

/** Factors come in few combinations, and an estate asks for each of them many times. */
const KEPT = 1000;
const kept = new WeakMap<TableDefinition, Known>();

function knownOf(table: TableDefinition): Known {
  const known = kept.get(table);
  if (known !== undefined) return known;
  const made: Known = { names: table.inputs.map(factorOf), every: new Map() };
  kept.set(table, made);
  return made;
}

/** What the particulars ask for, or why it cannot be told. */
function everyOf({ table }: Rule, { particulars = {} }: DueFacts): Every | Explanation {
  const { names, every } = knownOf(table);
  const values: Scalar[] = [];
  let key = "";
  for (const name of names) {
    const value = Object.hasOwn(particulars, name) ? particulars[name] : undefined;
    if (value === undefined) return missingIn(names, particulars);
    values.push(value);
    key += typeof value === "string" ? `${value.length}"${value}` : `${String(value)} `;
  }
  const same = every.get(key);
  if (same !== undefined) return same;
  const found = lookUpEvery(table, values);
  if (every.size >= KEPT) every.clear();
  every.set(key, found);
  return found;
}

function missingIn(names: readonly string[], particulars: Particulars): Explanation {
  const missing = names.filter((name) => !Object.hasOwn(particulars, name));
  return explain("needs-particulars", { names: [...new Set(missing)] });
}

/** The interval that the particulars ask for. */
export function byRisk(rule: Rule, known: DueFacts, record: DoneRecord): Span {
  const asked = everyOf(rule, known);
  if ("code" in asked) return undecided(record, asked);
  const { every, factors, reason } = asked;
  const due = addDuration(record.on, every);
  return {
    record,
    earliest: rule.early === undefined ? due : subtractDuration(due, rule.early),
    due,
    latest: rule.late === undefined ? due : addDuration(due, rule.late),
    why: explain("by-risk", { every, factors, reason, ...facts(record) }),
  };
}

/** Never done, and how often it has to be done cannot be told; undefined where it can. */
export function firstByRisk(rule: Rule, known: DueFacts): Span | undefined {
  const asked = everyOf(rule, known);
  if (!("code" in asked)) return undefined;
  const day: CivilDate = known.registered;
  return { record: null, earliest: day, due: day, latest: day, why: asked, undecided: true };
}
