import { type Checklist, DIALECT, JSON_SCHEMA_DRAFT } from "@roundbook/schemas";

const NAMES = Array.from({ length: 20 }, (_, at) => `area_${at + 1}`);

/** Twenty graded points, a score in whole per cent, and the next interval by its band. */
export const TWENTY_GRADES: Checklist = {
  $schema: JSON_SCHEMA_DRAFT,
  dialect: DIALECT,
  title: "Twenty areas",
  type: "object",
  properties: Object.fromEntries(
    NAMES.map((name, at) => [
      name,
      {
        $ref: "#/$defs/graded" as const,
        title: `Area ${at + 1}`,
        minimum: 1,
        maximum: 5,
        ask: { mandatory: true, absentAllowed: ["not-applicable" as const] },
      },
    ]),
  ),
  scores: {
    building: {
      title: "Score",
      of: NAMES,
      method: "share-of-maximum",
      round: { rule: "half-up", decimals: 0 },
      bands: [
        { title: "Two years", from: 66, outcome: "pass", next: "P2Y" },
        { title: "One year", from: 0, outcome: "advisory", next: "P1Y" },
      ],
    },
  },
  additionalProperties: false,
};
