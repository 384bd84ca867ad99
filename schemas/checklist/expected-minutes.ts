import type { Checklist } from "./meta-schema.ts";

/** Half a minute a point, and never less than it takes to walk up to the asset. */
const A_POINT = 0.5;
const AT_LEAST = 2;

/** Minutes that one check by a checklist is expected to take: what it says, else reckoned from its points. */
export const expectedMinutes = ({
  minutes,
  properties,
}: Pick<Checklist, "minutes" | "properties">): number =>
  minutes ?? Math.max(AT_LEAST, Math.round(Object.keys(properties).length * A_POINT));
