/** What a CSV file, one of its rows or its mapping can have wrong, with the parameters of each. */
export const IMPORT_CODES = {
  "csv-empty": [],
  "csv-not-utf8": [],
  "csv-ragged": ["expected", "found"],
  "csv-quote-open": ["limit"],
  "csv-row-too-long": ["limit"],

  "column-missing": ["column", "columns"],
  "column-twice": ["column", "times"],
  "unit-not-accepted": ["unit", "accepted"],
  "import-never": ["kind"],
  "unknown-checklist": [],
  "unknown-asset-type": ["assetType", "known"],

  "date-format": ["text", "format"],
  "date-no-such-day": ["text", "format"],
  "date-in-future": ["text", "today"],
  "number-format": ["text", "decimal"],
  "number-not-whole": ["text"],
  "boolean-format": ["text"],
  "word-unknown": ["text", "known"],
  "choice-unknown": ["text", "known"],
  "label-too-long": ["length", "limit"],

  "asset-number-missing": [],
  "unknown-asset": ["number"],
  "number-ambiguous": ["number", "assets"],
  "number-twice": ["number", "row"],
  "number-taken": ["number"],
  "place-missing": [],
  "place-too-deep": ["name"],

  "key-missing": [],
  /** The same key earlier in this file. */
  "same-key-twice": ["key", "row"],
  /** The same key in an import before this one. */
  "same-key-other-content": ["key", "entry"],
} as const;
