import { expect, it } from "vitest";
import { LINT_CODES } from "../../shared/codes/lint-codes.ts";
import { limit, lint, point } from "./testing/lint-changed.ts";

it("a checklist with every keyword has no error", () => {
  const errors = lint({}).filter(({ code }) => LINT_CODES[code]?.level === "error");
  expect(errors).toEqual([]);
});

const count = "/groups/1/repeat/count";
const stop = "/stops/0";
it.each<readonly [string, unknown, string, string]>([
  [point("loops", "several"), undefined, point("loops"), "several-missing"],
  [point("loops", "quantity"), undefined, point("loops"), "quantity-missing"],
  [point("water", "quantity"), undefined, point("water"), "quantity-missing"],
  [point("sum", "quantity"), undefined, point("sum"), "quantity-missing"],
  [point("sum", "calculate"), undefined, point("sum"), "calculation-missing"],
  [point("sum", "calculate"), "answers.clossing", point("sum", "calculate"), "unknown-name"],
  [point("sum", "calculate"), "answers.water", point("sum", "calculate"), "unit-mismatch"],
  [point("sum", "calculate"), "answers.sum + 1", point("sum", "calculate"), "value-cycle"],
  [point("sum", "calculate"), "answers.opened", point("sum", "calculate"), "unknown-name"],
  [point("plate", "items"), undefined, point("plate"), "choices-without-options"],
  [
    point("plate", "items", "oneOf", 1, "const"),
    "whole",
    point("plate", "items", "oneOf", 1),
    "duplicate-option",
  ],
  [point("hinges", "maximum"), -1, point("hinges"), "range-empty"],
  [point("label", "calculate"), "1", point("label", "calculate"), "keyword-wrong-kind"],
  [point("closing", "pattern"), "a", point("closing", "pattern"), "keyword-wrong-kind"],
  [
    point("closing", "several"),
    { count: 2, combine: "mean" },
    point("closing", "several"),
    "keyword-wrong-kind",
  ],
  [
    point("water", "ask"),
    { wait: { atLeast: 1 } },
    point("water", "ask", "wait"),
    "keyword-wrong-kind",
  ],
  [
    point("closing", "ask", "wait"),
    { atLeast: 60, atMost: 5 },
    point("closing", "ask", "wait"),
    "wait-empty",
  ],
  [point("label", "pattern"), "(?=a)", point("label", "pattern"), "pattern-refused"],
  ["/particulars/sockets/pattern", "^1", "/particulars/sockets/pattern", "pattern-wrong-type"],
  ["/particulars/fitted/pattern", "(a)\\1", "/particulars/fitted/pattern", "pattern-refused"],
  [limit("opened", "min"), 1, limit("opened", "min"), "limit-kind"],
  [limit("closing", "notAfter"), "2026-01-01", limit("closing", "notAfter"), "limit-kind"],
  [limit("plate", "sameAsLast"), { within: 1 }, limit("plate", "sameAsLast"), "limit-kind"],
  [limit("opened", "decision"), { rule: "simple" }, limit("opened", "decision"), "limit-kind"],
  [limit("plate", "accept"), ["holed"], limit("plate", "accept", 0), "limit-accepts-unknown"],
  [limit("opened", "notAfter"), "2026-02-30", limit("opened", "notAfter"), "no-such-day"],
  [
    limit("opened", "notAfter", "from"),
    "asset.fited",
    limit("opened", "notAfter", "from"),
    "date-bound-unknown",
  ],
  [
    limit("opened", "notAfter", "from"),
    "asset.sockets",
    limit("opened", "notAfter", "from"),
    "date-bound-not-date",
  ],
  [
    limit("opened", "notAfter", "from"),
    "answers.opened",
    limit("opened", "notAfter", "from"),
    "bound-of-itself",
  ],
  [
    limit("closing", "decision"),
    { rule: "guarded-acceptance" },
    limit("closing", "decision"),
    "decision-without-uncertainty",
  ],
  [
    limit("closing", "decision"),
    { rule: "non-binary", uncertainty: -0.1 },
    limit("closing", "decision", "uncertainty"),
    "uncertainty-negative",
  ],
  [
    point("closing", "limits", 1),
    { sameAsLast: { within: -1 }, decision: { rule: "non-binary", uncertainty: 1 }, basis: "b" },
    point("closing", "limits", 1, "decision"),
    "decision-without-bound",
  ],
  [
    point("closing", "limits", 1),
    { sameAsLast: { within: -1 }, basis: "b" },
    point("closing", "limits", 1, "sameAsLast", "within"),
    "within-negative",
  ],
  [
    point("closing", "limits", 1),
    { sameAsLast: { within: "answers.closing / 10" }, basis: "b" },
    point("closing", "limits", 1, "sameAsLast", "within"),
    "bound-of-itself",
  ],
  [`${stop}/after/0`, "hinge", `${stop}/after/0`, "stop-unknown-point"],
  [`${stop}/points/0`, "clossing", `${stop}/points/0`, "stop-unknown-point"],
  [`${stop}/groups`, ["leafs"], `${stop}/groups/0`, "stop-unknown-group"],
  [`${stop}/after/0`, "label", `${stop}/after/0`, "stop-without-verdict"],
  [`${stop}/points/0`, "hinges", stop, "stop-stops-itself"],
  [`${stop}/groups`, ["leaves"], stop, "stop-stops-itself"],
  ["/groups/0/groupAnswer", true, "/groups/0/groupAnswer", "repeat-group-answer"],
  ["/groups/0/points", [], "/groups/0/points", "repeat-without-points"],
  [
    "/groups/0/repeat/members/1/id",
    "left",
    "/groups/0/repeat/members/1/id",
    "repeat-duplicate-member",
  ],
  [count, "widest", count, "unit-mismatch"],
  [
    point("loops", "several", "count"),
    "widest",
    point("loops", "several", "count"),
    "unit-mismatch",
  ],
  [limit("hinges", "min"), "widest", limit("hinges", "min"), "unit-mismatch"],
  [count, 13, "/groups/1/repeat/atMost", "range-empty"],
  [count, "answers.hinges", count, "repeated-name-outside"],
  [count, "asset.fitted", count, "type-mismatch"],
  [point("sum", "calculate"), "answers.loops", point("sum", "calculate"), "repeated-name-outside"],
  [limit("loops", "max"), "answers.gap_top * 1", limit("loops", "max"), "repeated-name-outside"],
  [point("label", "ask"), { when: "false" }, point("label", "ask", "when"), "point-unreachable"],
  [limit("closing", "when"), "1 > 2", limit("closing", "when"), "limit-unreachable"],
])("%s = %j: at %s it tells %s", (place, value, pointer, code) => {
  const found = lint({ [place]: value });
  expect(found).toContainEqual(expect.objectContaining({ pointer, code }));
  for (const { code: told, params } of found) {
    expect(Object.keys(params).sort()).toEqual([...(LINT_CODES[told]?.params ?? [])].sort());
  }
});
