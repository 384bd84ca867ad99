/** U+00A0 keeps a figure and its unit, and the groups of a figure, on one line. */
const space = "\u00a0";

/** Symbols in print for UCUM atoms whose code differs from what people read. */
const symbols: Readonly<Record<string, string>> = {
  Ohm: "Ω",
  Cel: "°C",
  "[degF]": "°F",
  deg: "°",
  "%": "%",
  "[ppth]": "‰",
  "[ppm]": "ppm",
  "[ppb]": "ppb",
  "[pH]": "pH",
  "[in_i]": "in",
  "[ft_i]": "ft",
  "[mi_i]": "mi",
  "[psi]": "psi",
  "[lb_av]": "lb",
  "[gal_us]": "gal (US)",
  "[gal_br]": "gal (imp)",
  "[CFU]": "cfu",
  "[NTU]": "NTU",
  a: "year",
  mo: "month",
  wk: "week",
  mm_Hg: "mmHg",
  "m[Hg]": "mHg",
  "m[H2O]": "mH₂O",
  "B[SPL]": "B",
};

/** Atoms above that take a prefix: `Pa` is no peta-year. */
const prefixed = ["Ohm", "Cel", "B[SPL]", "m[Hg]", "m[H2O]"];
const prefixes = [
  "da",
  "Y",
  "Z",
  "E",
  "P",
  "T",
  "G",
  "M",
  "k",
  "h",
  "d",
  "c",
  "m",
  "u",
  "n",
  "p",
  "f",
];
const raised = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** Prints a UCUM code as people write the unit: `MOhm` is MΩ, `mm2` mm², `m3/h` m³/h, `Ohm/m` Ω/m. */
export function printUnit(code: string) {
  if (code === "" || code === "1") return "";
  return code
    .replace(/\{([^}]*)\}/g, (_, note: string) => note)
    .split(/([./])/)
    .map((part) => (part === "." ? "·" : part === "/" ? "/" : printTerm(part)))
    .join("");
}

function printTerm(term: string) {
  const parts = /^(.*?[^0-9+-])([+-]?[0-9]+)?$/s.exec(term);
  const atom = parts?.[1];
  if (atom === undefined) return term;
  return printAtom(atom) + raise(parts?.[2]);
}

function raise(exponent: string | undefined) {
  if (exponent === undefined) return "";
  return [...exponent].map((sign) => (sign === "-" ? "⁻" : (raised[Number(sign)] ?? ""))).join("");
}

function printAtom(atom: string): string {
  const whole = symbols[atom];
  if (whole !== undefined) return whole;
  const prefix = prefixes.find(
    (sign) => atom.startsWith(sign) && prefixed.includes(atom.slice(sign.length)),
  );
  const print = prefix === "u" ? "μ" : prefix;
  if (prefix !== undefined) return print + (symbols[atom.slice(prefix.length)] ?? "");
  // A micro prefix before an atom that prints as it is written: uA, um, uS, ug, uL.
  return atom.length > 1 && /^u[A-Za-z]/.test(atom) ? `μ${atom.slice(1)}` : atom;
}

export interface FigureOptions {
  /** Places after the sign; without it as many as the figure has, at most 12 significant. */
  readonly decimals?: number;
  readonly decimal?: "." | ",";
}

/** Thousands from 1 000 up are grouped by a no-break space; a true minus stands before a negative. */
export function printNumber(value: number, { decimals, decimal = "." }: FigureOptions = {}) {
  if (!Number.isFinite(value)) throw new RangeError("only finite figures are printed");
  const plain = decimals === undefined ? plainDigits(value) : value.toFixed(decimals);
  const [whole = "", places] = plain.replace("-", "").split(".");
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, space);
  const minus = plain.startsWith("-") && /[1-9]/.test(plain) ? "−" : "";
  return minus + grouped + (places === undefined ? "" : decimal + places);
}

/** Twelve significant digits, as figures are compared, without an exponent. */
function plainDigits(value: number) {
  const rounded = Number(value.toPrecision(12));
  const text = String(rounded);
  if (!text.includes("e")) return text;
  if (Math.abs(rounded) >= 1) return BigInt(rounded).toString();
  const places = rounded.toFixed(
    Math.min(100, Math.max(0, 12 - Math.floor(Math.log10(Math.abs(rounded))) - 1)),
  );
  return places.includes(".") ? places.replace(/\.?0+$/, "") : places;
}

export interface QuantityOptions extends FigureOptions {
  readonly comparator?: "<" | ">" | "=" | "<=" | ">=";
}

const comparators = { "<": "<", ">": ">", "<=": "≤", ">=": "≥" } as const;

/** A figure and its unit on one line: "> 200 MΩ", "54.2 °C", "5 %", "15°". */
export function printQuantity(value: number, unit = "", options: QuantityOptions = {}) {
  const { comparator = "=" } = options;
  const before = comparator === "=" ? "" : comparators[comparator] + space;
  const sign = printUnit(unit);
  const between = sign === "" || sign === "°" ? "" : space;
  return before + printNumber(value, options) + between + sign;
}

/** A person's text with no line break between a figure and its unit: "10 m × 1.5 mm²". */
export const unbroken = (text: string): string =>
  text.replace(/(\d) (?=(?:[a-zA-ZΩµμ°%]{1,3}[²³]?)(?:[\s,.;)]|$))/g, "$1\u00a0");

/** A formula with its numbers, as printed: with the sign of a minus, not of a break between words. */
export const printWorking = (working: string): string =>
  working.replace(/(^|[\s(])-(?=[\s\d.(])/g, "$1−");
