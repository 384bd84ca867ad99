import type {
  AssetTypeRow,
  Checklist,
  ImportMapping,
  ParticularDefinitions,
  ResultsMapping,
} from "@roundbook/schemas";
import { answerable } from "./answerable.ts";
import { type AnswerField, answersOf, unitsOf, wordTwice } from "./mapping-answers.ts";
import {
  ASSET_WORDS,
  columnFor,
  guessFormat,
  guessParticulars,
  guessPlaces,
} from "./mapping-guess.ts";

/** A mapping as a form edits it; "" stands for "no column". */
export interface MappingFields {
  kind: "register" | "results";
  source: string;
  key: string;
  decimal: "." | ",";
  number: string;
  description: string;
  /** Name of a type, or `TYPE_BY_COLUMN`. */
  assetType: string;
  typeColumn: string;
  /** Code of the one site of all lines; "" where a column names it. */
  site: string;
  /** Columns of places from the site down, or from below the one site. */
  place: string[];
  serial: string;
  particulars: Record<string, string>;
  checklist: string;
  date: string;
  format: ResultsMapping["date"]["format"] | "";
  createAssets: boolean;
  /** Words for OK and for not OK at every check that has none of its own. */
  checkWords: string[];
  answers: Record<string, AnswerField>;
}

/** No asset type can be named so. */
export const TYPE_BY_COLUMN = "=";
export const MOST_PLACES = 4;

export interface SampledFile {
  readonly name: string;
  readonly columns: readonly string[];
  readonly sample: readonly (readonly string[])[];
}

/** A file the server keeps until it is brought in. */
export interface Uploaded extends SampledFile {
  readonly id: string;
  readonly delimiter: string;
}

const columnOf = (file: SampledFile, column: string): string[] => {
  const at = file.columns.indexOf(column);
  return at < 0 ? [] : file.sample.map((line) => line[at] ?? "");
};

export const formatOf = (file: SampledFile, column: string) => guessFormat(columnOf(file, column));

/**
 * The columns of places under one site for all, or from the site down. Without a column of the
 * site nothing is guessed: its buildings would come in as sites.
 */
export const placeColumns = (file: SampledFile, site: string): string[] => {
  const { fromSite, columns } = guessPlaces(file.columns);
  const below = fromSite ? columns.slice(1) : columns;
  const found = site !== "" ? below : fromSite ? columns : [];
  return Array.from({ length: MOST_PLACES }, (_, at) => found[at] ?? "");
};

export const firstFields = (file: SampledFile): MappingFields => {
  const { columns } = file;
  const date = columnFor(columns, ASSET_WORDS.date);
  return {
    kind: "register",
    source: file.name.replace(/\.csv$/i, ""),
    key: columnFor(columns, ASSET_WORDS.key),
    decimal: ".",
    number: columnFor(columns, ASSET_WORDS.number),
    description: columnFor(columns, ASSET_WORDS.description),
    assetType: "",
    typeColumn: columnFor(columns, ASSET_WORDS.type),
    site: "",
    place: placeColumns(file, ""),
    serial: columnFor(columns, ASSET_WORDS.serial),
    particulars: {},
    checklist: "",
    date,
    format: formatOf(file, date),
    createAssets: false,
    // As people write it; the two words of the dialect itself are always known.
    checkWords: ["OK", "not OK"],
    answers: {},
  };
};

/** What a line may say of an asset: the type's particulars, of every type where a column says it. */
export const definitionsOf = (
  types: readonly AssetTypeRow[],
  assetType: string,
): ParticularDefinitions =>
  Object.assign(
    {},
    ...types
      .filter((one) => assetType === TYPE_BY_COLUMN || one.assetType === assetType)
      .map((one) => one.particulars),
  );

export const particularColumns = (file: SampledFile, definitions: ParticularDefinitions) =>
  guessParticulars(file.columns, definitions);

const given = (columns: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(columns).filter(([, column]) => column !== ""));

const assetOf = (fields: MappingFields): ImportMapping["asset"] => {
  const { number, description, assetType, typeColumn, site, serial } = fields;
  const place = fields.place.filter((column) => column !== "");
  const particulars = given(fields.particulars);
  return {
    number,
    ...(description ? { description } : {}),
    assetType: assetType === TYPE_BY_COLUMN ? { column: typeColumn } : assetType,
    ...(site ? { site } : {}),
    ...(place.length > 0 ? { place } : {}),
    ...(serial ? { serial } : {}),
    ...(Object.keys(particulars).length > 0 ? { particulars } : {}),
  };
};

/** Whether a line of the file may make an asset, so that it has to say what the asset is. */
export const makesAssets = (fields: MappingFields): boolean =>
  fields.kind === "register" || fields.createAssets;

/** What still has to be chosen or mended before the file can be tried. */
export type Wanting =
  | { readonly what: "source" | "number" | "type" | "place" }
  | { readonly what: "checklist" | "date" | "format" | "answers" }
  | { readonly what: "unit" | "word"; readonly point: string; readonly word: string };

export const wanting = (
  fields: MappingFields,
  document: Checklist | undefined,
  sites: number,
): Wanting | null => {
  if (fields.source.trim() === "") return { what: "source" };
  if (fields.number === "") return { what: "number" };
  if (makesAssets(fields)) {
    const type = fields.assetType === TYPE_BY_COLUMN ? fields.typeColumn : fields.assetType;
    if (type === "") return { what: "type" };
    const placed = fields.site !== "" || fields.place.some((column) => column !== "");
    if (!placed && sites !== 1) return { what: "place" };
  }
  if (fields.kind === "register") return null;
  if (!document) return { what: "checklist" };
  if (fields.date === "") return { what: "date" };
  if (fields.format === "") return { what: "format" };
  return wantingAnswers(fields, document);
};

const wantingAnswers = (fields: MappingFields, document: Checklist): Wanting | null => {
  let answered = false;
  for (const { name, point, title } of answerable(document)) {
    const field = fields.answers[name];
    if (!field || field.column === "") continue;
    answered = true;
    if (unitsOf(point).length > 0 && field.unit === "")
      return { what: "unit", point: title, word: "" };
    const word = wordTwice(point, field, fields.checkWords);
    if (word !== undefined) return { what: "word", point: title, word };
  }
  return answered ? null : { what: "answers" };
};

/** The mapping as the server takes it; only for fields that want nothing. */
export const mappingOf = (
  fields: MappingFields,
  document: Checklist | undefined,
): ImportMapping => {
  const { kind, key, decimal, createAssets, format } = fields;
  const common = {
    source: fields.source.trim(),
    ...(key ? { key } : {}),
    decimal,
    asset: makesAssets(fields) ? assetOf(fields) : { number: fields.number },
  };
  if (kind === "register") return { kind, ...common };
  if (!document || format === "") throw new Error("a mapping of results wants its checklist");
  const answers = answersOf(document, fields.answers, fields.checkWords);
  const date = { column: fields.date, format };
  return { kind, ...common, checklist: fields.checklist, createAssets, date, answers };
};
