import { POINT_KINDS, type PointKind } from "../checklist/answer-types.ts";
import type { PointDefinition } from "../checklist/meta-schema.ts";

/** The kind of a point, from its `$ref`. @throws RangeError for a reference that is no answer type. */
export function kindOf(point: PointDefinition): PointKind {
  const kind = POINT_KINDS.find((name) => point.$ref === `#/$defs/${name}`);
  if (kind === undefined) throw new RangeError(`no kind of point: ${point.$ref}`);
  return kind;
}
