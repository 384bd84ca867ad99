import { type Failure, failure } from "../formulas/engine-type.ts";
import type { Judging } from "./judging.ts";
import type { PreparedPoint } from "./prepared.ts";

/**
 * Whether verdicts on other points keep this one from being asked: code `stopped` when one does,
 * `stop-undecided` while one might. Not knowing whether it is forbidden is no leave to count it.
 */
export function stoppedBy(point: PreparedPoint, run: Judging): Failure | undefined {
  let open: Failure | undefined;
  for (const { after, on, say } of point.stops) {
    for (const source of after) {
      const verdicts = run.verdictsOn(source);
      if (verdicts.some((verdict) => on.has(verdict)))
        return failure("stopped", { by: source.id, say });
      if (verdicts.includes("undecided")) open ??= failure("stop-undecided", { by: source.id });
    }
  }
  return open;
}
