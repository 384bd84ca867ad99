import { expect, test } from "vitest";
import { dueAddress, scopeIn, scopeQuery } from "./plan-scope.tsx";

test.each([{ kind: "all" }, { kind: "site", id: "a" }, { kind: "keeper", id: "b" }] as const)(
  "the scope of the plan stands in its address: $kind",
  (scope) => expect(scopeIn(scopeQuery(scope))).toEqual(scope),
);

test("a heavy week leads to the due list of the same scope", () => {
  expect(dueAddress({ kind: "keeper", id: "b" }, "2026-12-07")).toBe("/due?keeper=b&on=2026-12-07");
  expect(dueAddress({ kind: "all" })).toBe("/due");
});
