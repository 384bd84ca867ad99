import { printUnit } from "@roundbook/runner/form";
import type { Checklist, ParticularDefinitions, ResultsMapping } from "@roundbook/schemas";
import { answerable } from "./answerable.ts";

const plain = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "");

const spelt = (text: string): string[] => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];

const ends = (words: readonly string[], all: readonly string[]): boolean =>
  words.length > 0 && words.every((word, at) => word === all[all.length - words.length + at]);

interface Wanted {
  readonly words: readonly string[];
  /** A column with one of these words is about something else: "Next due date" is no day done. */
  readonly never?: readonly string[];
  /** Nothing longer that ends with the words will do. */
  readonly whole?: boolean;
}

/**
 * The column whose name is one of the words, whatever its case and spaces, else the only one that
 * ends with one of them; "" when none does or several do.
 */
export const columnFor = (columns: readonly string[], wanted: Wanted): string => {
  const { words, never = [], whole = false } = wanted;
  for (const word of words) {
    const exact = columns.find((column) => plain(column) === plain(word));
    if (exact !== undefined) return exact;
  }
  if (whole) return "";
  const near = columns.filter((column) => {
    const said = spelt(column);
    return (
      !said.some((word) => never.includes(word)) && words.some((word) => ends(spelt(word), said))
    );
  });
  return near.length === 1 ? (near[0] ?? "") : "";
};

const OTHER_NUMBERS = ["serial", "phone", "model", "part", "order", "floor", "room", "site"];
const OTHER_DAYS = ["due", "next", "expiry", "until", "updated", "created", "installed", "built"];

export const ASSET_WORDS = {
  number: {
    words: ["number", "asset number", "asset no", "asset id", "no", "tag"],
    never: OTHER_NUMBERS,
  },
  description: { words: ["description", "what it is", "asset", "name"], never: OTHER_NUMBERS },
  serial: { words: ["serial", "serial number", "serial no"] },
  date: {
    words: ["date", "done on", "tested on", "inspected on", "completed on"],
    never: OTHER_DAYS,
  },
  // What names a row for ever is never guessed from the end of a name: "Site ID" names a site.
  key: { words: ["id", "record id", "row id"], whole: true },
  type: { words: ["type", "asset type"], whole: true },
} as const satisfies Readonly<Record<string, Wanted>>;

/** Words that name a place, from the site down. */
const PLACE_WORDS: readonly Wanted[] = [
  { words: ["site", "site name"], whole: true },
  { words: ["building", "building name", "location", "place"], whole: true },
  { words: ["floor", "storey", "level"], whole: true },
  { words: ["room", "room name"], whole: true },
];

/** The columns that name the place, from the site down; whether the first of them is the site. */
export const guessPlaces = (
  columns: readonly string[],
): { readonly fromSite: boolean; readonly columns: readonly string[] } => {
  const found = PLACE_WORDS.map((words) => columnFor(columns, words));
  return { fromSite: found[0] !== "", columns: found.filter((column) => column !== "") };
};

/** Whether the one's words begin or end the other's: "Class" ends "Protection class". */
const beginsOrEnds = (words: readonly string[], all: readonly string[]): boolean =>
  ends(words, all) || (words.length > 0 && words.every((word, at) => word === all[at]));

interface Named {
  readonly title: string;
  readonly unit?: string;
}

/** "Length (m)" names a length in metres as "Length" does; in another unit it would not. */
const spellings = (name: string, { title, unit }: Named): string[] =>
  [name, title, ...(unit ? [name, title].map((word) => `${word} ${printUnit(unit)}`) : [])]
    .map(plain)
    .filter((word) => word !== "");

/**
 * A column for each name: the one that reads the same, else the only one whose words begin or end
 * its title and no other title, so that a guess never lies between two.
 */
const guessColumns = (
  columns: readonly string[],
  wanted: Readonly<Record<string, Named>>,
): Record<string, string> => {
  const named = Object.entries(wanted).map(([name, one]) => {
    const words = spellings(name, one);
    return [name, columns.find((column) => words.includes(plain(column))) ?? ""] as const;
  });
  const used = new Set(named.map(([, column]) => column));
  const free = columns.filter((column) => !used.has(column));
  const open = named.filter(([, column]) => column === "").map(([name]) => name);
  const fits = (column: string, name: string) =>
    beginsOrEnds(spelt(column), spelt(wanted[name]?.title ?? ""));
  return Object.fromEntries(
    named.map(([name, column]) => {
      if (column !== "") return [name, column];
      const near = free.filter((one) => fits(one, name));
      const [only] = near;
      const sure = only !== undefined && near.length === 1;
      return [name, sure && open.filter((other) => fits(only, other)).length === 1 ? only : ""];
    }),
  );
};

/** A column for each question that a cell can answer. */
export const guessAnswers = (
  columns: readonly string[],
  document: Checklist,
): Record<string, string> =>
  guessColumns(
    columns,
    Object.fromEntries(
      answerable(document).map(({ name, title, point }) => [
        name,
        { title, unit: point.quantity?.unit },
      ]),
    ),
  );

export const guessParticulars = (
  columns: readonly string[],
  particulars: ParticularDefinitions,
): Record<string, string> => guessColumns(columns, particulars);

type Format = ResultsMapping["date"]["format"];

const SHAPES: readonly { format: Format; shape: RegExp }[] = [
  { format: "YYYY-MM-DD", shape: /^\d{4}-\d{2}-\d{2}$/ },
  { format: "DD.MM.YYYY", shape: /^\d{1,2}\.\d{1,2}\.\d{4}$/ },
  { format: "D MMM YYYY", shape: /^\d{1,2} [A-Za-z]{3,} \d{4}$/ },
];

/**
 * How days are written, when the sample leaves no doubt. Slashes do: 03/04/2026 is two days, so
 * they are only guessed when a figure over 12 stands first or second in some line.
 */
export const guessFormat = (sample: readonly string[]): Format | "" => {
  const days = sample.map((day) => day.trim()).filter((day) => day !== "");
  if (days.length === 0) return "";
  const found = SHAPES.find(({ shape }) => days.every((day) => shape.test(day)));
  if (found) return found.format;
  const slashes = days.map((day) => /^(\d{1,2})\/(\d{1,2})\/\d{4}$/.exec(day));
  if (!slashes.every((match) => match !== null)) return "";
  const dayFirst = slashes.some((match) => Number(match?.[1]) > 12);
  const monthFirst = slashes.some((match) => Number(match?.[2]) > 12);
  if (dayFirst === monthFirst) return "";
  return dayFirst ? "DD/MM/YYYY" : "MM/DD/YYYY";
};
