import type { Checklist, Judgement } from "@roundbook/schemas";
import { useMemo } from "react";
import { wordedJudgement } from "./model/worded-judgement.ts";

/** The judgement with the texts of the checklist in the reader's language; its verdicts stay. */
export const useWorded = (
  judgement: Judgement,
  data: Checklist,
  shown: Checklist,
  language: string | undefined,
): Judgement =>
  useMemo(
    () =>
      data === shown || language === undefined
        ? judgement
        : wordedJudgement(judgement, data, shown, language),
    [judgement, data, shown, language],
  );
