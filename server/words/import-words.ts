/** What a CSV file, one of its rows or its mapping has wrong, and what would be right. */
export const IMPORT_WORDS = {
  "csv-empty": "the file is empty: the first line has to name the columns",
  "csv-not-utf8": "this is not UTF-8 text: save the file as CSV in UTF-8",
  "csv-ragged":
    "{found} cells where the header has {expected}: is a cell with the delimiter in quotes?",
  "csv-quote-open": "a quote is opened and never closed: nothing after it could be read",
  "csv-row-too-long":
    "the row is longer than {limit} bytes, as when a quote is never closed: nothing after it could be read",

  "column-missing": "there is no column {column}; there are: {columns}",
  "column-twice": "{times} columns are named {column}: give each its own name",
  "unit-not-accepted": "{unit} is no unit of this point; it takes: {accepted}",
  "import-never": "{kind} cannot be imported from a table",
  "unknown-checklist": "no checklist with this id was issued here",
  "unknown-asset-type": "there is no asset type {assetType}; there are: {known}",

  "date-format": "{text} is not written as {format}",
  "date-no-such-day": "there is no such day as {text} ({format})",
  "date-in-future": "{text} is after today, {today}",
  "number-format":
    "{text} is no number with the decimal mark {decimal} and without thousands marks",
  "number-not-whole": "{text} is no whole number",
  "boolean-format": "{text} is neither true nor false: write true, yes, 1 or false, no, 0",
  "word-unknown": "{text} is no answer here; known are: {known}",
  "choice-unknown": "{text} is none of the choices; known are: {known}",
  "label-too-long": "{length} characters are too many: at most {limit}",

  "asset-number-missing": "the row names no asset",
  "unknown-asset": "there is no asset {number}, and the mapping does not say createAssets",
  "number-ambiguous":
    "{assets} assets have the number {number}: give them numbers of their own first",
  "number-twice": "row {row} has the number {number} already: each asset needs its own",
  "number-taken": "another asset has the number {number}, with other content",
  "place-missing": "the row names no place",
  "place-too-deep": "{name} would lie below a room: places are site, building, floor, room",

  "key-missing": "the row has no key, which the mapping says identifies it",
  "same-key-twice": "row {row} has the key {key} already, with other content",
  "same-key-other-content":
    "the key {key} was imported before with other content, as entry {entry}",
} as const;
