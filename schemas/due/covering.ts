import type { Checklist } from "../checklist/meta-schema.ts";
import { pointIdentity } from "../checklist/point-identity.ts";
import { at, type Problem, problem } from "../shared/problem.ts";
import type { IntervalDefinition } from "./interval-schema.ts";
import { spreadOf } from "./mean-days.ts";
import type { IntervalRule } from "./rule-schema.ts";

export interface DefinedInterval {
  readonly id: string;
  readonly definition: IntervalDefinition;
  /** The newest issue of its checklist. */
  readonly document: Checklist;
}

const identities = ({ definition, document }: DefinedInterval): ReadonlyMap<string, string> =>
  new Map(
    Object.keys(document.properties).map((point) => {
      const identity = pointIdentity(definition.checklist, document, point);
      const owner = "block" in identity ? ["block", identity.block] : [identity.checklist];
      return [[...owner, point].join(" "), point];
    }),
  );

/** Points of the shorter check that the longer one does not ask; they are the same by identity alone. */
function lacking(longer: DefinedInterval, shorter: DefinedInterval): readonly string[] {
  const asked = identities(longer);
  return [...identities(shorter)]
    .filter(([identity]) => !asked.has(identity))
    .map(([, point]) => point)
    .sort();
}

/** Whether one check asks every point that another asks, such as by an older issue of its checklist. */
export const asksAll = (longer: DefinedInterval, shorter: DefinedInterval): boolean =>
  lacking(longer, shorter).length === 0;

/** Equal is not longer, nor is what a result, an event or the use may shorten. */
function isLonger(longer: IntervalRule, shorter: IntervalRule): boolean {
  const [long, short] = [spreadOf(longer), spreadOf(shorter)];
  return long !== null && short !== null && long.least > short.most;
}

function pairProblems(
  longer: DefinedInterval,
  shorter: DefinedInterval,
  pointer: string,
): readonly Problem[] {
  const { assetType, title, rule } = shorter.definition;
  if (assetType !== longer.definition.assetType)
    return [problem(pointer, "covers-other-type", { title })];
  const points = lacking(longer, shorter);
  return [
    ...(isLonger(longer.definition.rule, rule) ? [] : [problem(pointer, "covers-not-longer")]),
    ...(points.length > 0 ? [problem(pointer, "covers-lacks-points", { points })] : []),
  ];
}

/** The titles on a way from one interval back to where it began; undefined when there is none. */
function wayBack(
  from: DefinedInterval,
  to: string,
  byId: ReadonlyMap<string, DefinedInterval>,
  seen: Set<string>,
): readonly string[] | undefined {
  const { title, covers = [] } = from.definition;
  if (from.id === to) return [title];
  if (seen.has(from.id)) return undefined;
  seen.add(from.id);
  for (const id of covers) {
    const next = byId.get(id);
    const rest = next && wayBack(next, to, byId, seen);
    if (rest !== undefined) return [title, ...rest];
  }
  return undefined;
}

/**
 * What is wrong with the intervals that one covers; pointers are into its definition. `all` may hold
 * the interval as it was before. Both rules are ones that `ruleProblems` has nothing against.
 */
export function coversProblems(
  interval: DefinedInterval,
  all: readonly DefinedInterval[],
): Problem[] {
  const byId = new Map([...all, interval].map((one) => [one.id, one]));
  return (interval.definition.covers ?? []).flatMap((id, index) => {
    const pointer = at("/covers", index);
    const shorter = byId.get(id);
    if (id === interval.id) return [problem(pointer, "covers-itself")];
    if (shorter === undefined) return [problem(pointer, "covers-unknown", { interval: id })];
    const circle = wayBack(shorter, interval.id, byId, new Set());
    if (circle !== undefined) {
      const titles = [interval.definition.title, ...circle];
      return [problem(pointer, "covers-in-circle", { titles })];
    }
    return pairProblems(interval, shorter, pointer);
  });
}

/** A shorter check and those that may stand for it. */
export interface CoverStep {
  readonly interval: string;
  readonly rule: IntervalRule;
  readonly by: readonly { readonly interval: string; readonly title: string }[];
}

/** Shorter checks, each after all that may stand for it. */
export type CoverPlan = readonly CoverStep[];

/**
 * Which intervals stand for which, of one asset type or of all. A cover that has become impossible,
 * as when a checklist lost a point, covers nothing.
 */
export function coverPlan(all: readonly DefinedInterval[]): CoverPlan {
  const steps = all.flatMap((shorter): (CoverStep & { readonly most: number })[] => {
    const { id, definition } = shorter;
    const by = all
      .filter((longer) => longer.definition.covers?.includes(id) && longer.id !== id)
      .filter((longer) => pairProblems(longer, shorter, "").length === 0)
      .map((longer) => ({ interval: longer.id, title: longer.definition.title }))
      .sort((a, b) => (a.interval < b.interval ? -1 : 1));
    const { rule } = definition;
    return by.length === 0
      ? []
      : [{ interval: id, rule, by, most: spreadOf(rule)?.most ?? Number.POSITIVE_INFINITY }];
  });
  // What covers is strictly longer, so the longest first leaves none before what covers it.
  return steps
    .sort((a, b) => b.most - a.most || (a.interval < b.interval ? -1 : 1))
    .map(({ most: _, ...step }) => step);
}
