import { civilDate, formatCivilDate } from "@roundbook/schemas";
import { useMemo } from "react";
import type { ChecklistFormProps } from "./form-props.ts";
import type { Surroundings } from "./section-view.tsx";

const dayOf = (at: number): string => {
  const date = new Date(at);
  return formatCivilDate(civilDate(date.getFullYear(), date.getMonth() + 1, date.getDate()));
};

/** Clock, day and person of the page; a trial on its own takes the browser's. */
export function useSurroundings({
  now = Date.now,
  on,
  signer,
}: Pick<ChecklistFormProps, "now" | "on" | "signer">): Surroundings {
  return useMemo(() => ({ now, on: on ?? dayOf(now()), signer }), [now, on, signer]);
}
