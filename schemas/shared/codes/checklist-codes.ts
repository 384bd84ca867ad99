/** What a value can have wrong in its shape, found by a schema; with the parameters of each. */
export const SHAPE_CODES = {
  "unknown-keyword": ["keyword", "nearest"],
  "missing-keyword": ["keyword"],
  "exactly-one-of": ["keywords"],
  "wrong-type": ["expected"],
  "not-allowed": ["allowed"],
  "no-form-fits": [],
  "too-small": ["limit"],
  "too-large": ["limit"],
  "too-short": ["limit"],
  "too-long": ["limit"],
  "too-few": ["limit"],
  "too-many": ["limit"],
  duplicate: ["first", "second"],
  "bad-name": ["name"],
  "bad-format": ["pattern"],
  blank: [],
  "not-json": [],
  /** A NUL, which databases cut a text at, or half of a surrogate pair, which no UTF-8 can write. */
  "bad-text": [],
  "document-too-big": ["limit"],
  "document-too-deep": ["limit"],
  invalid: ["rule"],
} as const;

/** What an answer can have wrong in its shape. */
export const ANSWER_CODES = {
  "unknown-point": ["point", "nearest"],
  "answer-shape": ["kind"],
  "answer-not-an-option": ["options"],
  "answer-too-small": ["limit"],
  "answer-too-large": ["limit"],
  "answer-too-long": ["limit"],
  "answer-pattern": ["pattern"],
  "answer-no-such-day": ["answer"],
  /** A point of a repeat is answered for a member, and a member only for a point of a repeat. */
  "unknown-member": ["point", "member", "members"],
  "never-answered": ["kind"],
} as const;

/** What a particular of an asset can have wrong. */
export const PARTICULAR_CODES = {
  "unknown-particular": ["name", "nearest"],
  "particular-wrong-type": ["name", "expected"],
  "particular-not-allowed": ["name", "allowed"],
  "particular-too-small": ["name", "limit"],
  "particular-too-large": ["name", "limit"],
  "particular-too-long": ["name", "limit"],
  "particular-pattern": ["name", "pattern"],
  "particular-no-such-day": ["name"],
} as const;

/** What a formula can have wrong; `start` and `end` are UTF-16 offsets into its text. */
export const FORMULA_CODES = {
  "formula-syntax": ["reason", "start", "end"],
  "formula-not-allowed": ["construct", "start", "end"],
  "formula-too-long": ["length", "limit"],
  "formula-too-complex": ["nodes", "depth"],
  "reserved-word": ["word", "start", "end"],
  "unknown-name": ["name", "nearest", "start", "end"],
  "type-mismatch": ["expected", "found", "start", "end"],
  "unit-mismatch": ["expected", "found", "start", "end"],
  "not-an-option": ["name", "value", "nearest", "start", "end"],
} as const;
