import type { ScoreDefinition } from "@roundbook/schemas";
import type { DraftDocument } from "./draft-document.ts";

const NAME = "score";
export type Band = ScoreDefinition["bands"][number];

export const gradedPoints = (document: DraftDocument): string[] =>
  Object.entries(document.properties)
    .filter(([, point]) => point.$ref === "#/$defs/graded")
    .map(([name]) => name);

/** A score over every graded point, as it begins. */
export const addScore = (document: DraftDocument, title: string): DraftDocument => ({
  ...document,
  scores: {
    ...document.scores,
    [NAME]: {
      title,
      of: gradedPoints(document),
      method: "share-of-maximum",
      round: { rule: "half-up", decimals: 0 },
      bands: [
        { title: "Good", from: 60, outcome: "pass" },
        { title: "Poor", from: 0, outcome: "fail" },
      ],
    },
  },
});

export const changeScore = (
  document: DraftDocument,
  name: string,
  change: (score: ScoreDefinition) => ScoreDefinition,
): DraftDocument => {
  const before = document.scores?.[name];
  return before
    ? { ...document, scores: { ...document.scores, [name]: change(before) } }
    : document;
};

/** A score without one of its points. */
export const withoutScored = (score: ScoreDefinition, name: string): ScoreDefinition => {
  const { weights, ...rest } = score;
  const of = score.of.filter((point) => point !== name);
  return setWeights({ ...rest, of }, weights ?? {});
};

/** How much each point counts; what counts once needs no word. */
export const setWeights = (
  { weights: _, ...score }: ScoreDefinition,
  given: Readonly<Record<string, number>>,
): ScoreDefinition => {
  const said = Object.entries(given).filter(
    ([name, weight]) => weight !== 1 && score.of.includes(name),
  );
  return said.length > 0 ? { ...score, weights: Object.fromEntries(said) } : score;
};

const WEIGHT = /^\s*(\d{1,4}(?:[.,]\d{1,3})?)\s*[×x*]\s*(.+?)\s*$/;
const MOST_WEIGHT = 1000;

/** Lines such as "2 × Frame" by title; the first line that names no point or no weight is wrong. */
export const readWeights = (
  text: string,
  titles: ReadonlyMap<string, string>,
): { readonly weights: Record<string, number> } | { readonly wrong: string } => {
  const weights: Record<string, number> = {};
  for (const line of text.split("\n").filter((one) => one.trim() !== "")) {
    const [, figure = "", title = ""] = WEIGHT.exec(line) ?? [];
    const name = [...titles].find(([, one]) => one === title)?.[0];
    const weight = Number(figure.replace(",", "."));
    if (name === undefined || !(weight > 0 && weight <= MOST_WEIGHT)) return { wrong: line };
    weights[name] = weight;
  }
  return { weights };
};

export const removeScore = (document: DraftDocument, name: string): DraftDocument => {
  const { scores, ...rest } = document;
  const { [name]: _, ...left } = scores ?? {};
  return Object.keys(left).length > 0 ? { ...rest, scores: left } : rest;
};

/** Bands run from the highest down, however they were typed. */
const inOrder = (bands: readonly Band[]): Band[] => [...bands].sort((a, b) => b.from - a.from);

export const addBand = (score: ScoreDefinition, title: string): ScoreDefinition => {
  const highest = Math.max(0, ...score.bands.map((band) => band.from));
  return {
    ...score,
    bands: inOrder([...score.bands, { title, from: Math.min(100, highest + 1) }]),
  };
};

export const changeBand = (
  score: ScoreDefinition,
  at: number,
  change: (band: Band) => Band,
): ScoreDefinition => ({
  ...score,
  bands: inOrder(score.bands.map((band, index) => (index === at ? change(band) : band))),
});

/** The last band stays: a score without one is no score. */
export const removeBand = (score: ScoreDefinition, at: number): ScoreDefinition =>
  score.bands.length === 1
    ? score
    : { ...score, bands: score.bands.filter((_, index) => index !== at) };

const UNITS = { day: "D", week: "W", month: "M", year: "Y" } as const;

/** "3 years" or "at once" as the interval to the next check; undefined when it is neither. */
export const readNext = (text: string): string | undefined => {
  if (/^\s*at once\s*$/i.test(text)) return "at-once";
  const match = /^\s*(\d{1,3})\s*(day|week|month|year)s?\s*$/i.exec(text);
  if (!match?.[1] || !match[2] || Number(match[1]) === 0) return undefined;
  return `P${Number(match[1])}${UNITS[match[2].toLowerCase() as keyof typeof UNITS]}`;
};
