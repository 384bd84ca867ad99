import type { ScoreDefinition } from "@roundbook/schemas";
import type { DraftDocument } from "./draft-document.ts";

const NAME = "score";

export const gradedPoints = (document: DraftDocument): string[] =>
  Object.entries(document.properties)
    .filter(([, point]) => point.$ref === "#/$defs/graded")
    .map(([name]) => name);

/** Scores every graded point, changing what is given of the score that is there. */
export const withScore = (
  document: DraftDocument,
  change: Partial<Pick<ScoreDefinition, "title" | "bands">>,
): DraftDocument => {
  const [name = NAME, score] = Object.entries(document.scores ?? {})[0] ?? [];
  const next: ScoreDefinition = {
    title: "Score",
    method: "share-of-maximum",
    round: { rule: "half-up", decimals: 0 },
    bands: [
      { title: "Good", from: 60, outcome: "pass" },
      { title: "Poor", from: 0, outcome: "fail" },
    ],
    ...score,
    of: gradedPoints(document),
    ...change,
  };
  return { ...document, scores: { ...document.scores, [name]: next } };
};

export const withoutScore = (document: DraftDocument): DraftDocument => {
  const { scores: _, ...rest } = document;
  return rest;
};
