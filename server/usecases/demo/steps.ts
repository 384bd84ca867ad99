import type { Entry } from "@roundbook/schemas";
import type { PastInspection } from "./past.ts";

type Step = "made-safe" | "repaired" | "verified";
interface Planted {
  readonly point: string;
  readonly steps: readonly Step[];
}

/** What was done about a defect in the same visit, by asset number and visits back from the last. */
const STEPS: Readonly<Record<string, Planted>> = {
  "1015 0": { point: "feet", steps: ["made-safe"] },
  "4067 0": { point: "earth_continuity", steps: ["made-safe", "repaired"] },
  "7104 0": { point: "valves", steps: ["made-safe"] },
  "4058 4": { point: "gap_head", steps: ["made-safe", "repaired"] },
  "7064 7": { point: "hot", steps: ["made-safe", "repaired"] },
};

/** The steps taken in each visit: what was repaired before is verified on the next one. */
export function createSteps(
  newId: () => string,
): (visit: PastInspection, inspection: Entry) => Entry[] {
  const repaired = new Map<string, string>();
  return ({ asset: { number, kind }, check, age }, inspection) => {
    // The planted defects are of the rounds' own checks.
    if (check !== kind) return [];
    const { asset, author, device, happenedAt, civilDate } = inspection;
    const step = (defect: string, name: Step): Entry => ({
      id: newId(),
      kind: "defect-step",
      asset,
      author,
      device,
      happenedAt,
      civilDate,
      body: { defect, step: name },
    });
    const earlier = repaired.get(number);
    repaired.delete(number);
    const verified = earlier === undefined ? [] : [step(earlier, "verified")];
    const planted = STEPS[`${number} ${age}`];
    if (!planted) return verified;
    const defect = `${inspection.id}:${planted.point}`;
    if (planted.steps.includes("repaired")) repaired.set(number, defect);
    return [...verified, ...planted.steps.map((name) => step(defect, name))];
  };
}
