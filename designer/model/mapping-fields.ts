import type {
  AbsenceReason,
  AssetTypeRow,
  Checklist,
  ImportMapping,
  ResultsMapping,
} from "@roundbook/schemas";
import {
  ASSET_WORDS,
  columnFor,
  guessAnswers,
  guessFormat,
  guessParticulars,
} from "./mapping-guess.ts";

/** A mapping as a form edits it; "" stands for "no column". */
export interface MappingFields {
  kind: "register" | "results";
  source: string;
  key: string;
  decimal: "." | ",";
  number: string;
  description: string;
  assetType: string;
  site: string;
  place: string;
  serial: string;
  particulars: Record<string, string>;
  checklist: string;
  date: string;
  format: ResultsMapping["date"]["format"] | "";
  createAssets: boolean;
  empty: AbsenceReason | "";
  words: string;
  answers: Record<string, string>;
}

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

export const firstFields = (file: SampledFile): MappingFields => {
  const { columns } = file;
  const date = columnFor(columns, ...ASSET_WORDS.date);
  return {
    kind: "register",
    source: file.name.replace(/\.csv$/i, ""),
    key: columnFor(columns, ...ASSET_WORDS.key),
    decimal: ".",
    number: columnFor(columns, ...ASSET_WORDS.number),
    description: columnFor(columns, ...ASSET_WORDS.description),
    assetType: "",
    site: "",
    place: "",
    serial: columnFor(columns, ...ASSET_WORDS.serial),
    particulars: {},
    checklist: "",
    date,
    format: formatOf(file, date),
    createAssets: false,
    empty: "",
    words: "",
    answers: {},
  };
};

export const particularColumns = (file: SampledFile, type: AssetTypeRow | undefined) =>
  guessParticulars(file.columns, type?.particulars ?? {});

export const answerColumns = (file: SampledFile, document: Checklist | undefined) =>
  document ? guessAnswers(file.columns, document) : {};

const given = (columns: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(columns).filter(([, column]) => column !== ""));

const assetOf = (fields: MappingFields): ImportMapping["asset"] => {
  const places = fields.place
    .split(",")
    .map((one) => one.trim())
    .filter(Boolean);
  const particulars = given(fields.particulars);
  return {
    number: fields.number,
    ...(fields.description ? { description: fields.description } : {}),
    ...(fields.assetType ? { assetType: fields.assetType } : {}),
    ...(fields.site ? { site: fields.site } : {}),
    ...(places.length > 0 ? { place: places } : {}),
    ...(fields.serial ? { serial: fields.serial } : {}),
    ...(Object.keys(particulars).length > 0 ? { particulars } : {}),
  };
};

/** Whether a line of the file may make an asset, so that it has to say what the asset is. */
export const makesAssets = (fields: MappingFields): boolean =>
  fields.kind === "register" || fields.createAssets;

/** "Y, N" says how OK and not OK are written in the file. */
const wordsOf = (text: string): Record<string, string> | undefined => {
  const [ok, notOk] = text.split(",").map((one) => one.trim());
  if (!ok) return undefined;
  return { [ok]: "ok", ...(notOk ? { [notOk]: "not-ok" } : {}) };
};

/** The mapping as the server takes it; null while something it needs is not chosen. */
export const mappingOf = (
  fields: MappingFields,
  document: Checklist | undefined,
): ImportMapping | null => {
  if (fields.source.trim() === "" || fields.number === "") return null;
  const common = {
    source: fields.source.trim(),
    ...(fields.key ? { key: fields.key } : {}),
    decimal: fields.decimal,
    asset: makesAssets(fields) ? assetOf(fields) : { number: fields.number },
  };
  if (fields.kind === "register") return { kind: "register", ...common };
  if (!document || fields.checklist === "" || fields.date === "" || fields.format === "")
    return null;
  const words = wordsOf(fields.words);
  const answers = Object.fromEntries(
    Object.entries(given(fields.answers)).map(([name, column]) => {
      const point = document.properties[name];
      const isCheck = point?.$ref === "#/$defs/check";
      return [
        name,
        {
          column,
          ...(fields.empty ? { empty: fields.empty } : {}),
          ...(isCheck && words ? { words } : {}),
          ...(point?.quantity ? { unit: point.quantity.unit } : {}),
        },
      ];
    }),
  );
  return {
    kind: "results",
    ...common,
    checklist: fields.checklist,
    createAssets: fields.createAssets,
    date: { column: fields.date, format: fields.format },
    answers,
  };
};
