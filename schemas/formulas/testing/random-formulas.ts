import fc from "fast-check";
import { type Failure, failure, type NameTypes, type Scalar } from "../engine-type.ts";

/** Names without units or options: whatever the grammar gives over them is of the right types. */
export const PLAIN_NAMES: NameTypes = new Map([
  ["asset.a", { type: "number" }],
  ["asset.class", { type: "string" }],
  ["asset.wet", { type: "boolean" }],
  ["answers.b", { type: "number" }],
  ["answers.look", { type: "string" }],
  ["answers.done", { type: "boolean" }],
  ["joints", { type: "number" }],
  ["grade", { type: "string" }],
  ["sunny", { type: "boolean" }],
] as const);

/** A formula's text and how tightly its outermost operator binds. */
interface Piece {
  readonly text: string;
  readonly strength: number;
}
const CHOICE = 0;
const OR = 1;
const AND = 2;
const COMPARISON = 3;
const SUM = 4;
const PRODUCT = 5;
const UNARY = 6;
const ATOM = 7;

const atom = (text: string): Piece => ({ text, strength: ATOM });
const inside = ({ text, strength }: Piece, least: number): string =>
  strength < least ? `(${text})` : text;
const infix = (strength: number, op: string, left: Piece, right: Piece): Piece => ({
  text: `${inside(left, strength)} ${op} ${inside(right, strength + 1)}`,
  strength,
});
const named = (type: string) =>
  fc.constantFrom(
    ...[...PLAIN_NAMES].filter(([, known]) => known.type === type).map(([name]) => atom(name)),
  );

const NUMBERS = ["0", "1", "2", "7", "10", "0x1F", "0.1", "2.5", "1e3", "1e308", "5e-324"];
const LONG = ["9007199254740993", "9223372036854775807", "1.7976931348623157e308"];
const TEXTS = ["''", '"I"', "'II'", "'\\u00fc \\U0001f431'", "'it\\'s // (no) comment'", "'x'"];
const numberLiteral = fc.oneof(
  fc.constantFrom(...NUMBERS, ...LONG),
  fc.nat(1000).map(String),
  fc.double({ noNaN: true, noDefaultInfinity: true, min: 0 }).map(String),
);

const pieces = fc.letrec<{ number: Piece; text: Piece; truth: Piece }>((tie) => {
  const number = tie("number");
  const text = tie("text");
  const truth = tie("truth");
  const choice = (branch: fc.Arbitrary<Piece>) =>
    fc.tuple(truth, branch, branch).map(
      ([test, yes, no]): Piece => ({
        text: `${inside(test, OR)} ? ${inside(yes, OR)} : ${no.text}`,
        strength: CHOICE,
      }),
    );
  const bracketed = (of: fc.Arbitrary<Piece>) => of.map((piece) => atom(`(${piece.text})`));
  const unary = (sign: string, of: fc.Arbitrary<Piece>) =>
    of.map((piece): Piece => ({ text: `${sign}${inside(piece, ATOM)}`, strength: UNARY }));
  const pair = (strength: number, ops: readonly string[], of: fc.Arbitrary<Piece>) =>
    fc.tuple(of, fc.constantFrom(...ops), of).map(([a, op, b]) => infix(strength, op, a, b));
  const listed = (of: fc.Arbitrary<Piece>) =>
    fc.tuple(of, fc.array(of, { maxLength: 3 })).map(
      ([wanted, list]): Piece => ({
        text: `${inside(wanted, COMPARISON)} in [${list.map((one) => one.text).join(", ")}]`,
        strength: COMPARISON,
      }),
    );
  const depth = { maxDepth: 5, depthIdentifier: "formula" };
  return {
    number: fc.oneof(
      depth,
      fc.oneof(numberLiteral.map(atom), named("number")),
      pair(SUM, ["+", "-"], number),
      pair(PRODUCT, ["*", "/"], number),
      unary("-", number),
      choice(number),
      bracketed(number),
      fc
        .tuple(fc.constantFrom("min", "max"), fc.array(number, { minLength: 2, maxLength: 4 }))
        .map(([name, args]) => atom(`${name}(${args.map((arg) => arg.text).join(", ")})`)),
      fc
        .tuple(fc.constantFrom("abs", "round"), number)
        .map(([name, arg]) => atom(`${name}(${arg.text})`)),
    ),
    text: fc.oneof(
      depth,
      fc.oneof(fc.constantFrom(...TEXTS).map(atom), named("string")),
      choice(text),
    ),
    truth: fc.oneof(
      depth,
      fc.oneof(fc.constantFrom("true", "false").map(atom), named("boolean")),
      pair(AND, ["&&"], truth),
      pair(OR, ["||"], truth),
      unary("!", truth),
      pair(COMPARISON, ["<", "<=", ">", ">=", "==", "!="], number),
      pair(COMPARISON, ["==", "!="], text),
      pair(COMPARISON, ["==", "!="], truth),
      listed(number),
      listed(text),
      listed(truth),
      choice(truth),
    ),
  };
});

const gap = fc.constantFrom(" ", " ", "\n", "\r\n\t", ' // it\'s "one" (\n');
const written = (piece: fc.Arbitrary<Piece>): fc.Arbitrary<string> =>
  fc
    .tuple(piece, gap)
    .map(([{ text }, space]) =>
      text
        .split(/('(?:\\.|[^'\\])*')/)
        .map((part, index) => (index % 2 ? part : part.replaceAll(" ", space)))
        .join(""),
    )
    .filter((text) => text.length <= 500);

export const randomNumber = written(pieces.number);
export const randomText = written(pieces.text);
export const randomTruth = written(pieces.truth);

export type Given = ReadonlyMap<string, Scalar | Failure | undefined>;
const EXTREMES = [0, -0, 1, -1, 0.1, 1e308, -1.7976931348623157e308, 5e-324, 2 ** 53];
const values = {
  number: fc.oneof(
    fc.constantFrom(...EXTREMES),
    fc.integer({ min: -100, max: 100 }),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
  ),
  string: fc.constantFrom("", "I", "II", "ü 🐱", "x"),
  boolean: fc.boolean(),
};
const unhad = fc.constantFrom(undefined, failure("not-finite", { operation: "/" }));

/** A value, nothing, or the failure of another value under every name. */
export const randomGiven: fc.Arbitrary<Given> = fc
  .tuple(
    ...[...PLAIN_NAMES].map(([name, { type }]) =>
      fc
        .oneof({ weight: 5, arbitrary: values[type] }, { weight: 1, arbitrary: unhad })
        .map((value) => [name, value] as const),
    ),
  )
  .map((entries) => new Map(entries));
