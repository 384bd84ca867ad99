import { isLookUpFailure, lookUp } from "../../tables/look-up.ts";
import { addDuration, subtractDuration } from "../duration.ts";
import type { DueFacts } from "../facts.ts";
import type { RuleOf } from "../rule-schema.ts";
import type { DoneRecord } from "../window.ts";
import { explain, facts, type Span, undecided } from "./span.ts";

type Rule = RuleOf<"by-risk">;

const NAMED = "asset.";
const nameOf = (input: string): string =>
  input.startsWith(NAMED) ? input.slice(NAMED.length) : input;

/** The interval that the particulars ask for. */
export function byRisk(rule: Rule, known: DueFacts, record: DoneRecord): Span {
  const { particulars = {} } = known;
  const names = rule.table.inputs.map(nameOf);
  const missing = names.filter((name) => !Object.hasOwn(particulars, name));
  if (missing.length > 0)
    return undecided(record, explain("needs-particulars", { names: missing }));
  const factors = names.map((name) => `${name}: ${String(particulars[name])}`);
  const found = lookUp(
    rule.table,
    names.map((name) => particulars[name]),
  );
  if (isLookUpFailure(found)) return undecided(record, explain("no-risk-rule", { factors }));
  const every = String(found.value);
  const reason = rule.table.rules[found.rule]?.basis ?? "";
  const due = addDuration(record.on, every);
  return {
    record,
    earliest: rule.early === undefined ? due : subtractDuration(due, rule.early),
    due,
    latest: rule.late === undefined ? due : addDuration(due, rule.late),
    why: explain("by-risk", { every, factors, reason, ...facts(record) }),
  };
}
