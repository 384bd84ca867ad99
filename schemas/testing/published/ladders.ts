import { row } from "../../judge/testing/checklists.ts";
import {
  type CheckedFact,
  constant,
  INTERVALS,
  type JudgedCheck,
  judgedFact,
  looked,
  notOurFact,
  origin,
  readingPoint,
} from "./checked-fact.ts";

const DANISH = origin("Danish Working Environment Authority advice", "S", null, "list of 10");
const ARITHMETIC = origin("arithmetic", "R");
const EN_131 = origin("EN 131, trade pages", "S", 2018);
const ANSI = origin("ANSI A14", "M");
const LEANING = origin("HSE INDG455", "M", 2014);
const BEFORE_USE = origin(
  "HSE INDG455 / Ladder Association LA455",
  "M",
  2021,
  "check your ladder before you use it",
);

/** One out for four up; `slack` to either side, 0 for the bare figure. */
export const oneInFour = (height: number, slack: number, cases: JudgedCheck["cases"]) => ({
  says: "The foot stands out by a quarter of the height",
  parts: {
    particulars: { height: { title: "Height", type: "number", unit: "m" } },
    values: {
      slack: { unit: "m", const: slack },
      out: { unit: "m", formula: "asset.height / 4" },
    },
  } satisfies JudgedCheck["parts"],
  point: readingPoint("m", [{ min: "out - slack", max: "out + slack", basis: "1 in 4" }]),
  asset: { height },
  cases,
});

const exactly = (height: number, out: number): JudgedCheck => ({
  ...oneInFour(height, 0, [
    [{ value: out, unit: "m" }, "pass"],
    [{ value: out * 1000, unit: "mm" }, "pass"],
    [{ value: out * 1000 + 1, unit: "mm" }, "fail"],
    [{ value: out * 1000 - 1, unit: "mm" }, "fail"],
  ]),
  bound: out,
});

/** The angle that one standing rule gives, one degree either side unless told otherwise. */
export const leaning = (angle: number, either: number, cases: JudgedCheck["cases"]) => ({
  says: "The angle to the ground",
  point: readingPoint("deg", [{ min: angle - either, max: angle + either, basis: "Angle" }]),
  cases,
});

const deg = (value: number) => ({ value, unit: "deg" });

/** A rating by the class on the label; the load is not over it. */
const rated = (name: string, unit: string, cases: JudgedCheck["cases"], bound: number) => ({
  says: "The load is not over the rating of the class",
  parts: {
    particulars: {
      class: { title: "Class", enum: ["BS class 3", "IA", "I", "II", "III"] },
    },
    values: {
      rating: {
        unit,
        table: {
          policy: "unique",
          inputs: ["asset.class"],
          rules:
            unit === "kg"
              ? [row(["BS class 3"], 95)]
              : [row(["IA"], 300), row(["I"], 250), row(["II"], 225), row(["III"], 200)],
        },
      },
    },
  } satisfies JudgedCheck["parts"],
  point: readingPoint(unit, [{ max: "rating", basis: "Duty rating" }]),
  asset: { class: name },
  bound,
  cases,
});

const pounds = (name: string, load: number): JudgedCheck =>
  rated(
    name,
    "[lb_av]",
    [
      [{ value: load - 0.1, unit: "[lb_av]" }, "pass"],
      [{ value: load, unit: "[lb_av]" }, "pass"],
      [{ value: load * 0.45359237, unit: "kg" }, "pass"],
      [{ value: load + 0.1, unit: "[lb_av]" }, "fail"],
      [{ value: load * 0.4536, unit: "kg" }, "fail"],
    ],
    load,
  );

const cycles = (least: number): JudgedCheck => ({
  says: "Cycles of the durability test by class of use",
  point: { $ref: "#/$defs/count", title: "Cycles", limits: [{ min: least, basis: "EN 131" }] },
  cases: [
    [least + 1, "pass"],
    [least, "pass"],
    [least - 1, "fail"],
  ],
});

export const LADDERS: readonly CheckedFact[] = [
  judgedFact(
    "la-001",
    DANISH,
    leaning(75, 1, [
      [deg(75), "pass"],
      [deg(74), "pass"],
      [deg(76), "pass"],
      [deg(73.9), "fail"],
      [deg(76.1), "fail"],
    ]),
  ),
  judgedFact(
    "la-002",
    DANISH,
    constant("A ladder used for access stands above the landing", "min", 1, "m", 0.01, [
      [{ value: 100, unit: "cm" }, "pass"],
      [{ value: 99, unit: "cm" }, "fail"],
    ]),
  ),
  judgedFact(
    "la-003",
    origin("ladder practice, trade page", "S"),
    oneInFour(4, 0.05, [
      [{ value: 1, unit: "m" }, "pass"],
      [{ value: 0.95, unit: "m" }, "pass"],
      [{ value: 1.05, unit: "m" }, "pass"],
      [{ value: 0.94, unit: "m" }, "fail"],
      [{ value: 1.06, unit: "m" }, "fail"],
    ]),
  ),
  judgedFact("la-004", ARITHMETIC, exactly(2, 0.5)),
  judgedFact("la-005", ARITHMETIC, exactly(4, 1)),
  judgedFact("la-007", ARITHMETIC, exactly(7.2, 1.8)),
  judgedFact(
    "la-009",
    origin("trigonometry; OSHA rule from memory", "M", null, "acos 0.25"),
    // A quarter of the length is 75.52 degrees, a quarter of the height 75.96.
    leaning(75, 1, [
      [deg(75.5225), "pass"],
      [deg(75.9638), "pass"],
    ]),
    leaning(75.5225, 0.25, [
      [deg(75.5225), "pass"],
      [deg(75.9638), "fail"],
    ]),
  ),
  judgedFact(
    "la-017",
    EN_131,
    rated(
      "BS class 3",
      "kg",
      [
        [{ value: 94.9, unit: "kg" }, "pass"],
        [{ value: 95, unit: "kg" }, "pass"],
        [{ value: 95.1, unit: "kg" }, "fail"],
      ],
      95,
    ),
  ),
  judgedFact("la-018", EN_131, cycles(50_000)),
  judgedFact("la-019", EN_131, cycles(10_000)),
  judgedFact("la-022", ANSI, pounds("IA", 300)),
  judgedFact("la-023", ANSI, pounds("I", 250)),
  judgedFact("la-024", ANSI, pounds("II", 225)),
  judgedFact("la-025", ANSI, pounds("III", 200)),
  judgedFact("la-027", BEFORE_USE, looked("Feet there, clean and not worn")),
  judgedFact("la-028", BEFORE_USE, looked("No rung bent, missing or loose")),
  judgedFact("la-029", BEFORE_USE, looked("Locking device works")),
  judgedFact("la-031", BEFORE_USE, looked("Treads clean and firm")),
  judgedFact(
    "la-032",
    LEANING,
    constant("Longest spell at one time", "max", 30, "min", 1, [
      [{ value: 0.5, unit: "h" }, "pass"],
      [{ value: 1801, unit: "s" }, "fail"],
    ]),
  ),
  judgedFact("la-034", LEANING, constant("Above the landing: at least 1 m", "min", 1, "m", 0.01), {
    says: "Above the landing: at least three rungs",
    point: { $ref: "#/$defs/count", title: "Rungs", limits: [{ min: 3, basis: "INDG455" }] },
    cases: [
      [4, "pass"],
      [3, "pass"],
      [2, "fail"],
    ],
  }),
  notOurFact("la-038", origin("Work at Height Regulations 2005", "M", 2005, "reg 13"), INTERVALS),
];
