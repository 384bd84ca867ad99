import type { CivilDate } from "../shared/ids.ts";
import type { DueStatus, DueWindow } from "./window.ts";

/**
 * Both ends of a window belong to it; overdue is what is after `latest`. Whatever blocks use blocks
 * it until it is done, overdue or not; what cannot be told is undecided on every day.
 */
export function statusOn(window: Omit<DueWindow, "from" | "why">, on: CivilDate): DueStatus {
  const { closure } = window;
  if (closure?.status === "blocked" && on >= closure.from) return "blocked";
  if (window.undecided) return "undecided";
  if (window.lastDone === null) return on < window.earliest ? "not-yet" : "never-done";
  if (on > window.latest) return "overdue";
  if (closure?.status === "excused" && on >= closure.from && on < closure.reopens) return "excused";
  if (on > window.due) return "late-window";
  if (on === window.due) return "due";
  return on >= window.earliest ? "early" : "not-yet";
}
