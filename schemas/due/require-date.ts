import type { CivilDate } from "../shared/ids.ts";
import { parseCivilDate } from "./civil.ts";

/** @throws RangeError for what is no day; what users write is checked before it gets here. */
export function requireDate(iso: string): CivilDate {
  const day = parseCivilDate(iso);
  if (day === undefined) throw new RangeError(`no such day: ${iso}`);
  return day;
}
