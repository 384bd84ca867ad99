import type { Checklist } from "./meta-schema.ts";

/** Whether any text has a form to keep to, so that checking it needs the engine of patterns. */
export const usesPatterns = ({
  properties = {},
  particulars = {},
}: Partial<Pick<Checklist, "properties" | "particulars">>): boolean =>
  [...Object.values(properties), ...Object.values(particulars)].some(
    ({ pattern }) => pattern !== undefined,
  );
