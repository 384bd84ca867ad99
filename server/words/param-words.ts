/** Kinds of answer with their article, as a sentence says them. */
const KINDS: Readonly<Record<string, string>> = {
  check: "a check",
  choice: "a choice",
  choices: "a choice of several",
  graded: "a grade",
  count: "a count",
  reading: "a reading",
  readings: "several readings",
  calculated: "a calculation",
  date: "a date",
  text: "a note",
  photo: "a photo",
  signature: "a signature",
  note: "a note",
  sample: "a sample",
};

/** JSON's types, and those of formulas, in words. */
const TYPES: Readonly<Record<string, string>> = {
  object: "an object { … }",
  array: "a list [ … ]",
  string: "a text",
  number: "a number",
  integer: "a whole number",
  boolean: "true or false",
  null: "null",
  date: "a day such as 2026-11-25",
  "1": "a figure without unit",
};

/** What the reader of formulas calls a place where it goes no further, and why a series ends. */
const REASONS: Readonly<Record<string, string>> = {
  unexpected_token: "this word or sign does not fit here",
  unexpected_character: "this character has no meaning here",
  expected_token: "a word or sign is missing here",
  newline_in_string: "a text ends on its own line",
  invalid_escape_sequence: "the backslash stands before what it cannot",
  invalid_exponent: "this number is not complete",
  invalid_integer: "this number is not complete",
  invalid_hex_integer: "this number is not complete",
  unterminated_triple_quoted_string: "the text has no closing quotation marks",
  unterminated_string: "the text has no closing quotation mark",
  "count-reached": "its count is used up",
  "until-passed": "its last day is past",
  "never-again": "no day of the calendar fits it",
  "calendar-ends": "the calendar ends",
};

/** Why something cannot be told, where the code alone is known and none of its parameters. */
const CAUSES: Readonly<Record<string, string>> = {
  "stop-undecided": "what would stop it is not decided yet",
  missing: "something it hangs on is not known",
  "wrong-type": "something it hangs on is not of its type",
  "not-finite": "its formula gives no finite number",
  "no-rule": "no row of its table fits",
  "rules-conflict": "rows of its table contradict each other",
  "hits-not-as-declared": "its table does not fit as it declares",
  "count-not-right": "the number that comes out is no number of times",
  "unknown-particular": "a particular it hangs on is not known",
  "particular-wrong-type": "a particular it hangs on is not of its type",
  "particular-not-allowed": "a particular it hangs on is none of those allowed",
  "particular-too-small": "a particular it hangs on is too small",
  "particular-too-large": "a particular it hangs on is too large",
  "particular-too-long": "a particular it hangs on is too long",
  "particular-pattern": "a particular it hangs on is not of its form",
  "particular-no-such-day": "a particular it hangs on is no day of the calendar",
  "formula-refused": "its formula cannot be used",
  "formula-syntax": "it cannot be read",
  "formula-not-allowed": "it uses what formulas here do not have",
  "formula-too-long": "it is too long",
  "formula-too-complex": "it is too complex",
  "reserved-word": "it uses a word kept by the formula language",
  "unknown-name": "it names something that is not known",
  "type-mismatch": "its parts do not fit together",
  "unit-mismatch": "its units do not fit together",
  "not-an-option": "it compares with a value that cannot be",
  cycle: "it leads back to itself",
  "not-answered": "a point it hangs on is not answered",
  "not-an-answer": "the answer it hangs on is none",
  "not-asked": "a point it hangs on is not asked",
};

/** What asks for a check, as "it is …" goes on. */
const EVENTS: Readonly<Record<string, string>> = {
  repaired: "repaired",
  modified: "modified",
  returned: "back in service",
  reopened: "open again",
};

/** Parameters that say how long, as ISO 8601 durations. */
export const TIMES: ReadonlySet<string> = new Set([
  "every",
  "first",
  "within",
  "after",
  "next",
  "min",
  "max",
  "limit",
  "margin",
  "gap",
  "milder",
  "longer",
]);

/** Codes and names of the format that stand for words in a sentence, by parameter. */
export const PARAM_WORDS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  kind: KINDS,
  expected: TYPES,
  found: TYPES,
  reason: REASONS,
  after: EVENTS,
  cause: CAUSES,
  /** The unit of a bare number is not written. */
  unit: { "1": "" },
};
