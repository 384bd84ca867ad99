import { describe, expect, it } from "vitest";
import { CASES, outcomeOf } from "./testing/conformance-case.ts";

const NOT_FINITE =
  "a step that is not finite is a failure, never a number to hold a reading against";
const DOUBLES = "every number is a double, so whole numbers do not run over";
const NO_CONTAINER = "names stand for themselves: there is no container to look them up in first";

/** Cases that come out otherwise than the standard has it, each with the reason. */
const BY_DESIGN: Readonly<Record<string, string>> = {
  "comparisons/eq_literal/not_eq_double_nan": NOT_FINITE,
  "comparisons/ne_literal/not_ne_double_nan": NOT_FINITE,
  "comparisons/ne_literal/ne_double_nan": NOT_FINITE,
  "fp_math/fp_math/divide_zero": NOT_FINITE,
  "fp_math/fp_math/fp_overflow_positive": NOT_FINITE,
  "fp_math/fp_math/fp_overflow_negative": NOT_FINITE,
  "integer_math/int64_math/int64_overflow_positive": DOUBLES,
  "integer_math/int64_math/int64_overflow_negative": DOUBLES,
  "integer_math/int64_math/int64_overflow_add_negative": DOUBLES,
  "integer_math/int64_math/int64_overflow_sub_positive": DOUBLES,
  "integer_math/int64_math/int64_min_negate": DOUBLES,
  "integer_math/int64_math/int64_min_negate_mul": DOUBLES,
  "integer_math/int64_math/int64_min_negate_div": DOUBLES,
  "integer_math/int64_math/int64_overflow_mul_positive": DOUBLES,
  "integer_math/int64_math/int64_overflow_mul_negative": DOUBLES,
  "namespace/namespace/self_eval_container_lookup": NO_CONTAINER,
  "namespace/namespace/self_eval_container_lookup_unchecked": NO_CONTAINER,
};

/** Cases outside the profile, by what they are refused for. */
const REFUSED: Readonly<Record<string, number>> = {
  "function, method or macro": 1019,
  message: 545,
  bytes: 88,
  // Texts and truths have no order and no sum; the two sides of a comparison are of one type.
  "type-mismatch": 66,
  // Names of types, messages and enumerations, and names the case binds to none of our types.
  "unknown-name": 61,
  "string-prefix": 50,
  "optional entry or choice": 48,
  "unsigned-number": 46,
  "[]": 44,
  list: 43,
  member: 32,
  "name in back quotes": 28,
  map: 26,
  null: 13,
  "in-without-list": 11,
  "%": 8,
  // 32 brackets, a chain of 24 choices, 12 places in one another.
  "formula-too-complex": 3,
  "formula-too-long": 2,
  // `.99`: written 0.99 here, as on every form.
  "number that begins with its point": 1,
};

const outcomes = CASES.map((one) => ({ name: one.name, ...outcomeOf(one) }));

/** The standard's data as `@bufbuild/cel-spec` carries it (cel-spec 0.25.1, `tests/simple`). */
describe("the conformance data of the standard", () => {
  it("passes, is refused as outside the profile, or differs by design: nothing else", () => {
    const count = (kind: string) => outcomes.filter((one) => one.kind === kind).length;
    expect({
      total: outcomes.length,
      passes: count("passes"),
      refused: count("refused"),
      differs: count("differs"),
    }).toEqual({ total: 2344, passes: 193, refused: 2134, differs: 17 });
  });

  it("differs only where a rule of the profile is the reason", () => {
    const differing = outcomes.filter((one) => one.kind === "differs").map((one) => one.name);
    expect(differing).toEqual(Object.keys(BY_DESIGN));
  });

  it("is refused for constructs that the profile leaves out, each counted", () => {
    const counts: Record<string, number> = {};
    for (const one of outcomes) {
      if (one.kind === "refused") counts[one.why] = (counts[one.why] ?? 0) + 1;
    }
    expect(counts).toEqual(REFUSED);
  });
});
