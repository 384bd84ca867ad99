import { row } from "../../judge/testing/checklists.ts";
import {
  type CheckedFact,
  constant,
  edges,
  edgeValues,
  type JudgedCheck,
  judgedFact,
  type NumberKeyword,
  notOurFact,
  origin,
  readingPoint,
} from "./checked-fact.ts";

export const HSE =
  'HSE "Hot and cold water systems - things to consider" (hse.gov.uk) and HSE SIM 07/2007/12 appendix 3';
const TABLE_1 = origin(HSE, "R", 2007, "table 1");
const HSE_JUDGED = origin(HSE, "R", 2007);
const NHS = origin("NHS Estates Health Guidance Note (1998) and BRE IP14/03", "S", 1998);
const TEXTBOOK = "City & Guilds plumbing textbook quoting Building Regulations part G";
const ASHRAE = origin("ASHRAE Guideline 12-2000, summary", "S", 2000);
const CDC = origin("CDC Legionella toolkit", "M", 2021);

const cel = (value: number, elapsed?: number) => ({
  value,
  unit: "Cel",
  ...(elapsed === undefined ? {} : { elapsed }),
});
const fahrenheit = (value: number) => ({ value, unit: "[degF]" });

/** The time is part of the limit: read too early, too late or untimed, nothing is decided. */
const timed = (
  says: string,
  kind: NumberKeyword,
  bound: number,
  wait: { atLeast?: number; atMost?: number },
): JudgedCheck => {
  const at = wait.atMost ?? wait.atLeast ?? 0;
  const off = wait.atMost === undefined ? at - 1 : at + 1;
  const values = edgeValues(kind, bound, 0.1);
  const inside = values[0]?.[0] ?? bound;
  return {
    says,
    point: readingPoint("Cel", [{ [kind]: bound, basis: says }], { ask: { wait } }),
    cases: [
      ...values.map(([value, verdict]) => [cel(value, at), verdict] as const),
      [cel(inside, off), "undecided"],
      [cel(inside), "undecided"],
    ],
  };
};

export const hotWithin = (seconds: number): JudgedCheck =>
  timed(`50 °C within ${seconds} s`, "min", 50, { atMost: seconds });
const COLD = timed("Below 20 °C after two minutes", "exclusiveMax", 20, { atLeast: 120 });

const DELIVERY = [row(["bidet"], 38), row(["shower"], 41), row(["bath"], 44)];
/** Largest temperature of mixed water by outlet. */
const delivered = (outlet: string, bound: number): JudgedCheck => ({
  says: "Mixed water is not hotter than its outlet allows",
  parts: {
    particulars: { outlet: { title: "Outlet", enum: ["bidet", "shower", "bath"] } },
    values: {
      hottest: {
        unit: "Cel",
        table: { policy: "unique", inputs: ["asset.outlet"], rules: DELIVERY },
      },
    },
  },
  point: readingPoint("Cel", [{ max: "hottest", basis: "Health Guidance Note" }]),
  asset: { outlet },
  bound,
  cases: edges("max", bound, "Cel", 0.1),
});

/** Both ends of the range in which the bacteria grow are still in it. */
export const outsideGrowth = (low: number, high: number): readonly JudgedCheck[] => [
  constant(`Cold water is below ${low} °C`, "exclusiveMax", low, "Cel", 0.1),
  constant(`Hot water is above ${high} °C`, "exclusiveMin", high, "Cel", 0.1),
];

const atFahrenheit = (celsius: number, f: number): CheckedFact["judged"] => [
  constant("The limit in one unit, the reading in the other", "min", celsius, "Cel", 0.1, [
    [fahrenheit(f), "pass"],
    [fahrenheit(f - 0.1), "fail"],
  ]),
  constant("The same the other way about", "max", f, "[degF]", 0.1, [
    [cel(celsius), "pass"],
    [cel(celsius + 0.1), "fail"],
  ]),
];

const converted = (id: string, celsius: number, f: number): CheckedFact => ({
  ...judgedFact(id, origin("exact arithmetic 9/5*C+32", "C")),
  judged: atFahrenheit(celsius, f) ?? [],
  converts: [
    { from: [celsius, "Cel"], to: [f, "[degF]"] },
    { from: [f, "[degF]"], to: [celsius, "Cel"] },
  ],
});

export const WATER: readonly CheckedFact[] = [
  judgedFact("wa-001", TABLE_1, hotWithin(60)),
  judgedFact("wa-002", TABLE_1, COLD),
  judgedFact("wa-003", TABLE_1, constant("Flow of the calorifier", "min", 60, "Cel", 0.1)),
  judgedFact("wa-004", TABLE_1, constant("Return to the calorifier", "min", 50, "Cel", 0.1)),
  judgedFact("wa-005", TABLE_1, hotWithin(60)),
  judgedFact("wa-006", TABLE_1, {
    says: "Incoming cold water is preferably below 20 °C",
    point: readingPoint("Cel", [{ exclusiveMax: 20, severity: "advisory", basis: "Table 1" }]),
    cases: [
      [cel(19.9), "pass"],
      [cel(20), "advisory"],
      [cel(20.1), "advisory"],
    ],
  }),
  judgedFact("wa-016", origin("HSE literature", "S"), ...outsideGrowth(20, 45)),
  judgedFact(
    "wa-017",
    origin("WHO, Legionella and the prevention of legionellosis", "S", 2007),
    ...outsideGrowth(25, 45),
  ),
  notOurFact(
    "wa-018",
    origin("general reference on Legionella", "S"),
    "background on how fast bacteria die: no reading of an outlet",
  ),
  judgedFact(
    "wa-021",
    origin("HSE HSIS6 and hse.gov.uk scalding page", "R"),
    constant("A hot surface that vulnerable people may touch", "max", 43, "Cel", 0.1),
  ),
  judgedFact("wa-022", NHS, delivered("bidet", 38)),
  judgedFact("wa-023", NHS, delivered("shower", 41)),
  judgedFact("wa-025", NHS, delivered("bath", 44)),
  judgedFact("wa-026", NHS, constant("Bath, exceptional", "max", 46, "Cel", 0.1)),
  judgedFact(
    "wa-027",
    origin(TEXTBOOK, "R", 2013, "G3"),
    constant("Bath of a new dwelling", "max", 48, "Cel", 0.1),
  ),
  judgedFact(
    "wa-028",
    origin(TEXTBOOK, "R", 2013),
    constant("Schools, hospitals and care", "max", 43, "Cel", 0.1),
  ),
  judgedFact(
    "wa-029",
    origin("Water Regulations guidance G18.2 (textbook copy)", "R", null, "G18.2"),
    constant("Stored hot water", "min", 60, "Cel", 0.1),
    constant("Distributed hot water", "min", 55, "Cel", 0.1),
  ),
  judgedFact(
    "wa-030",
    origin("Water Regulations guidance G18.4", "R", null, "G18.4"),
    hotWithin(30),
  ),
  judgedFact(
    "wa-031",
    ASHRAE,
    constant("Hot storage", "min", 140, "[degF]", 0.1, [
      [cel(60), "pass"],
      [cel(59.9), "fail"],
    ]),
  ),
  judgedFact("wa-032", ASHRAE, constant("Hot distribution", "min", 124, "[degF]", 0.1)),
  judgedFact("wa-034", CDC, constant("Hot water circulating", "min", 120, "[degF]", 0.1)),
  judgedFact(
    "wa-035",
    CDC,
    constant("Cold water below 77 °F", "exclusiveMax", 77, "[degF]", 0.1, [
      [cel(25), "fail"],
      [cel(24.9), "pass"],
    ]),
  ),
  converted("wa-038", 25, 77),
  converted("wa-040", 41, 105.8),
  converted("wa-041", 43, 109.4),
  converted("wa-042", 44, 111.2),
  converted("wa-043", 45, 113),
  converted("wa-044", 50, 122),
  converted("wa-045", 55, 131),
  converted("wa-046", 60, 140),
  judgedFact("wa-050", HSE_JUDGED, { ...COLD, cases: [[cel(19.9, 120), "pass"]] }),
  judgedFact("wa-051", HSE_JUDGED, { ...COLD, cases: [[cel(20, 120), "fail"]] }),
];
