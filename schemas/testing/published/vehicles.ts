import { row } from "../../judge/testing/checklists.ts";
import {
  type CheckedFact,
  edges,
  INTERVALS,
  type JudgedCheck,
  judgedFact,
  notOurFact,
  origin,
  readingPoint,
} from "./checked-fact.ts";

const POLICE = "askthe.police.uk tread table";
const TREAD_TABLE = origin(POLICE, "R", null, "table");
const CUT_LIST = origin(POLICE, "R", null, "list");
const mot = (marker: "S" | "C", year: number | null = null) =>
  origin("MOT renewal rule, DVSA training slide", marker, year);

const mm = (value: number) => ({ value, unit: "mm" });

/** Least tread by class of vehicle. */
const tread = (vehicle: string, bound: number, cases?: JudgedCheck["cases"]): JudgedCheck => ({
  says: "Least depth of tread by class",
  parts: {
    particulars: { class: { title: "Class", enum: ["car", "larger", "motorcycle"] } },
    values: {
      least: {
        unit: "mm",
        table: {
          policy: "unique",
          inputs: ["asset.class"],
          rules: [row(["car"], 1.6), row([["larger", "motorcycle"]], 1)],
        },
      },
    },
  },
  point: readingPoint("mm", [{ min: "least", basis: "Tread table" }]),
  asset: { class: vehicle },
  bound,
  cases: cases ?? edges("min", bound, "mm", 0.1),
});

/** A cut longer than 25 mm or a tenth of the section width, whichever is greater. */
const cut = (width: number, bound: number, cases: JudgedCheck["cases"]): JudgedCheck => ({
  says: "Longest cut by width of the tyre",
  parts: { particulars: { width: { title: "Section width", type: "number", unit: "mm" } } },
  point: readingPoint("mm", [{ max: "max(25, 0.1 * asset.width)", basis: "Cut in a tyre" }]),
  asset: { width },
  bound,
  cases,
});

const DAY = 86_400_000;
const dayBefore = (date: string) =>
  new Date(Date.parse(date) - DAY).toISOString().slice(0, "YYYY-MM-DD".length);

/** The first day of a test that keeps the renewal date: a month before it runs out, and a day on. */
const renewal = (expiry: string, first: string): JudgedCheck => ({
  says: "Not before the renewal window opens",
  parts: {
    particulars: { expiry: { title: "Runs out", type: "string", format: "date" } },
  },
  point: {
    $ref: "#/$defs/date",
    title: "Day of the test",
    limits: [{ notBefore: { from: "asset.expiry", plus: "P1D", minus: "P1M" }, basis: "MOT" }],
  },
  asset: { expiry },
  cases: [
    [expiry, "pass"],
    [first, "pass"],
    [dayBefore(first), "fail"],
  ],
});

export const VEHICLES: readonly CheckedFact[] = [
  judgedFact("ot-037", TREAD_TABLE, tread("car", 1.6)),
  judgedFact("ot-038", TREAD_TABLE, tread("larger", 1)),
  judgedFact("ot-039", TREAD_TABLE, tread("motorcycle", 1)),
  judgedFact("ot-041", CUT_LIST, cut(205, 25, [...edges("max", 25, "mm", 1)])),
  judgedFact("ot-042", CUT_LIST, cut(205, 25, [[mm(24), "pass"]])),
  judgedFact("ot-043", CUT_LIST, cut(205, 25, [[mm(26), "fail"]])),
  judgedFact("ot-044", CUT_LIST, cut(315, 31.5, [[mm(30), "pass"]])),
  judgedFact(
    "ot-045",
    CUT_LIST,
    cut(315, 31.5, [
      [mm(31.5), "pass"],
      [mm(32), "fail"],
    ]),
  ),
  judgedFact("ot-046", TREAD_TABLE, tread("car", 1.6, [[mm(1.6), "pass"]])),
  judgedFact("ot-050", TREAD_TABLE, tread("larger", 1, [[mm(1.3), "pass"]])),
  judgedFact("ot-051", mot("S"), renewal("2026-05-15", "2026-04-16")),
  judgedFact("ot-052", mot("S", 2003), renewal("2003-04-01", "2003-03-02")),
  notOurFact("ot-053", mot("S"), INTERVALS),
  notOurFact("ot-054", mot("S"), INTERVALS),
  judgedFact("ot-055", mot("C"), renewal("2026-03-31", "2026-03-01")),
  judgedFact("ot-056", mot("C"), renewal("2028-03-31", "2028-03-01")),
  // A date bound adds its day first and comes to 28 February: the window is the due engine's.
  notOurFact("ot-057", mot("C"), INTERVALS),
  judgedFact("ot-059", mot("C"), renewal("2026-03-01", "2026-02-02")),
];
