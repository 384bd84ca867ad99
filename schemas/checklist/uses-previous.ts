import type { Checklist } from "./meta-schema.ts";

/** Whether any limit compares with the inspection before, so that judging needs its answers. */
export const usesPrevious = ({ properties }: Pick<Checklist, "properties">): boolean =>
  Object.values(properties).some(({ limits = [] }) =>
    limits.some(({ sameAsLast }) => sameAsLast !== undefined),
  );
