import type { Checklist, PointDefinition } from "../checklist/meta-schema.ts";
import { pointsBehind } from "../checklist/points-behind.ts";

/** Chains up to here are worked out as they come: a call for each link does no harm. */
const SHORT = 50;

const textsOf = ({ ask, calculate, several }: PointDefinition): readonly string[] =>
  [ask?.when, calculate, several?.count].filter((text) => typeof text === "string");

/**
 * Points that long chains of formulas lead through, each after those it needs: worked out in this
 * order no chain, which may lead through every point, exhausts the stack. Empty without any.
 */
export function neededFirst(doc: Checklist): readonly string[] {
  const behind = pointsBehind(doc);
  const needs = new Map(
    Object.entries(doc.properties).flatMap(([name, point]) => {
      const texts = textsOf(point);
      return texts.length > 0 ? [[name, texts.flatMap((text) => [...behind(text)])] as const] : [];
    }),
  );
  const depths = new Map<string, number>();
  const open = [...needs.keys()].reverse();
  const begun = new Set<string>();
  for (let name = open.at(-1); name !== undefined; name = open.at(-1)) {
    const needed: readonly string[] = needs.get(name) ?? [];
    const next = begun.has(name) ? [] : needed.filter((one) => needs.has(one) && !begun.has(one));
    begun.add(name);
    if (next.length > 0) {
      open.push(...next);
      continue;
    }
    open.pop();
    if (!depths.has(name))
      depths.set(name, 1 + Math.max(0, ...needed.map((one) => depths.get(one) ?? 0)));
  }
  return Math.max(0, ...depths.values()) > SHORT ? [...depths.keys()] : [];
}
