import type { Entry } from "@roundbook/schemas";
import type { PastInspection } from "./past.ts";

type Step = "made-safe" | "repaired";

/** What was done about a defect in the same visit, by asset number, for the last inspection. */
const STEPS: Readonly<Record<string, { point: string; steps: readonly Step[] }>> = {
  "1015": { point: "feet", steps: ["made-safe"] },
  "4067": { point: "earth_continuity", steps: ["made-safe", "repaired"] },
  "7104": { point: "valves", steps: ["made-safe"] },
};

export function stepsAfter(visit: PastInspection, inspection: Entry, newId: () => string): Entry[] {
  const planted = visit.age === 0 ? STEPS[visit.asset.number] : undefined;
  if (!planted) return [];
  const { asset, author, device, happenedAt, civilDate } = inspection;
  return planted.steps.map((step) => ({
    id: newId(),
    kind: "defect-step",
    asset,
    author,
    device,
    happenedAt,
    civilDate,
    body: { defect: `${inspection.id}:${planted.point}`, step },
  }));
}
