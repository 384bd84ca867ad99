import type { Checklist } from "../checklist/meta-schema.ts";
import type { DefinedInterval } from "../due/covering.ts";
import type { IntervalDefinition } from "../due/interval-schema.ts";
import type { IntervalRule } from "../due/rule-schema.ts";

const BLOCK = "01890000-0000-7000-8000-00000000000b";

/** Points by name; those of the block are the same in every checklist that includes it. */
const documentOf = (points: Readonly<Record<string, "own" | "block">>): Checklist =>
  ({
    title: "Checklist",
    type: "object",
    properties: Object.fromEntries(
      Object.entries(points).map(([name, from]) => [
        name,
        { title: name, $ref: "#/$defs/check", ...(from === "block" ? { block: BLOCK } : {}) },
      ]),
    ),
  }) as unknown as Checklist;

/** An interval of a checklist of its own, or of the one named. */
export const interval = (
  id: string,
  rule: IntervalRule,
  points: Readonly<Record<string, "own" | "block">>,
  more: Partial<IntervalDefinition> = {},
): DefinedInterval => ({
  id,
  definition: {
    title: id,
    assetType: "extinguisher",
    checklist: `checklist of ${id}`,
    rule,
    ...more,
  },
  document: documentOf(points),
});
