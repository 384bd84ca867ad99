import type { Judgement } from "./judgement.ts";

/**
 * Whether an inspection moves its due date: when it is complete, whatever its verdict. One that
 * evaluated nothing never does.
 */
export const countsAsDone = ({
  complete,
  overall,
}: Pick<Judgement, "complete" | "overall">): boolean => complete && overall !== "not-evaluated";
