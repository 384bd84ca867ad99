import { AREAS, pointOf } from "./areas.ts";

/** How the city's columns become buildings and inspections. An empty grade: there is no such area. */
export const MAPPING = (checklist: string) => ({
  kind: "results",
  source: "toronto-evaluations",
  key: "_id",
  checklist,
  asset: {
    number: "RSN",
    assetType: "apartment_building",
    description: "SITE_ADDRESS",
    place: ["WARDNAME"],
    particulars: {
      storeys: "CONFIRMED_STOREYS",
      units: "CONFIRMED_UNITS",
      built: "YEAR_BUILT",
      property: "PROPERTY_TYPE",
    },
  },
  createAssets: true,
  date: { column: "EVALUATION_COMPLETED_ON", format: "YYYY-MM-DD" },
  answers: Object.fromEntries(
    Object.keys(AREAS).map((column) => [pointOf(column), { column, empty: "not-applicable" }]),
  ),
});
