import { AREAS, pointOf } from "./areas.ts";

const SOURCE = "City of Toronto open data, Apartment Building Evaluation";

const areas = Object.entries(AREAS).map(([column, title]) => [
  pointOf(column),
  {
    $ref: "#/$defs/graded",
    title,
    minimum: 1,
    maximum: 5,
    ask: { mandatory: true, absentAllowed: ["not-applicable"] },
  },
]);

/**
 * The city's evaluation in the dialect, as data. Bands are those of the file's RESULTS_OF_SCORE:
 * 50 and below an audit, 51 to 65 one year, 66 to 85 two years, 86 to 100 three years.
 */
export const CHECKLIST = {
  $schema: "https://json-schema.org/draft/2020-12/schema",
  dialect: "urn:roundbook:checklist:1",
  title: "Apartment building evaluation",
  language: "en-CA",
  type: "object",
  properties: Object.fromEntries(areas),
  scores: {
    score: {
      title: "Score",
      of: Object.keys(AREAS).map(pointOf),
      method: "share-of-maximum",
      round: { rule: "half-up", decimals: 0 },
      bands: [
        { title: "Three years", from: 86, outcome: "pass", next: "P3Y", basis: SOURCE },
        { title: "Two years", from: 66, outcome: "pass", next: "P2Y", basis: SOURCE },
        { title: "One year", from: 51, outcome: "advisory", next: "P1Y", basis: SOURCE },
        { title: "Building audit", from: 0, outcome: "fail", next: "at-once", basis: SOURCE },
      ],
      basis: SOURCE,
    },
  },
  additionalProperties: false,
};

export const ASSET_TYPE = (checklist: string) => ({
  assetType: "apartment_building",
  title: "Apartment building",
  particulars: {
    // The city says 0 where it does not know.
    storeys: { title: "Storeys", type: "integer", minimum: 0 },
    units: { title: "Units", type: "integer", minimum: 0 },
    built: { title: "Year built", type: "integer" },
    property: {
      title: "Property type",
      type: "string",
      enum: ["PRIVATE", "TCHC", "SOCIAL HOUSING"],
    },
  },
  checklists: [checklist],
});

export const INTERVAL = (checklist: string) => ({
  title: "By the score",
  assetType: "apartment_building",
  checklist,
  rule: { kind: "by-result", score: "score" },
  basis: SOURCE,
});

/** The first site gives new ones their zone. */
export const FIRST_SITE = {
  parent: null,
  level: "site",
  code: "York Centre",
  name: "York Centre",
  zone: "America/Toronto",
};
