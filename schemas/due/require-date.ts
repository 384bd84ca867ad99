import type { CivilDate } from "../shared/ids.ts";
import { parseCivilDate } from "./civil.ts";

/** An estate has few rules and asks them for every asset. */
const KEPT = 500;
const kept = new Map<string, CivilDate>();

/** @throws RangeError for what is no day; what users write is checked before it gets here. */
export function requireDate(iso: string): CivilDate {
  const known = kept.get(iso);
  if (known !== undefined) return known;
  const day = parseCivilDate(iso);
  if (day === undefined) throw new RangeError(`no such day: ${iso}`);
  if (kept.size >= KEPT) kept.clear();
  kept.set(iso, day);
  return day;
}
