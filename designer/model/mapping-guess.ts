import type { Checklist, ParticularDefinitions, ResultsMapping } from "@roundbook/schemas";

const plain = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]+/g, "");

/** The column whose name is one of these words, whatever its case and spaces; "" when none is. */
export const columnFor = (columns: readonly string[], ...words: readonly string[]): string => {
  const wanted = words.map(plain);
  for (const word of wanted) {
    const exact = columns.find((column) => plain(column) === word);
    if (exact !== undefined) return exact;
  }
  return (
    columns.find((column) => wanted.some((word) => word !== "" && plain(column).endsWith(word))) ??
    ""
  );
};

export const ASSET_WORDS = {
  number: ["number", "asset number", "asset no", "asset id", "no", "tag"],
  description: ["description", "what it is", "asset", "name"],
  serial: ["serial", "serial number", "serial no"],
  date: ["date", "done on", "tested on", "inspected on", "completed on"],
  key: ["id", "_id", "record id", "row id"],
  type: ["type", "asset type"],
} as const;

const spelt = (text: string): string[] => text.toLowerCase().match(/[a-z0-9]+/g) ?? [];

/** Whether the one's words begin or end the other's: "Class" ends "Protection class". */
const beginsOrEnds = (words: readonly string[], all: readonly string[]): boolean =>
  words.length > 0 &&
  (words.every((word, at) => word === all[at]) ||
    words.every((word, at) => word === all[all.length - words.length + at]));

/**
 * A column for each name: the one that reads the same, else the only one whose words begin or end
 * its title and no other title, so that a guess never lies between two.
 */
const guessColumns = (
  columns: readonly string[],
  titles: Readonly<Record<string, string>>,
): Record<string, string> => {
  const named = Object.entries(titles).map(([name, title]) => {
    const wanted = [plain(name), plain(title)];
    return [name, columns.find((column) => wanted.includes(plain(column))) ?? ""] as const;
  });
  const used = new Set(named.map(([, column]) => column));
  const free = columns.filter((column) => !used.has(column));
  const open = named.filter(([, column]) => column === "").map(([name]) => name);
  const fits = (column: string, name: string) =>
    beginsOrEnds(spelt(column), spelt(titles[name] ?? ""));
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

/** A column for each point that a cell can answer: a photo is none. */
export const guessAnswers = (
  columns: readonly string[],
  document: Checklist,
): Record<string, string> =>
  guessColumns(
    columns,
    Object.fromEntries(
      Object.entries(document.properties)
        .filter(([, point]) => point.$ref !== "#/$defs/photo")
        .map(([name, point]) => [name, point.title]),
    ),
  );

export const guessParticulars = (
  columns: readonly string[],
  particulars: ParticularDefinitions,
): Record<string, string> =>
  guessColumns(
    columns,
    Object.fromEntries(Object.entries(particulars).map(([name, { title }]) => [name, title])),
  );

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
  if (slashes.some((match) => Number(match?.[1]) > 12)) return "DD/MM/YYYY";
  return slashes.some((match) => Number(match?.[2]) > 12) ? "MM/DD/YYYY" : "";
};
