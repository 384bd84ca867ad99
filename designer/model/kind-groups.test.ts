import { POINT_KINDS } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { KINDS_IN_ORDER } from "./kind-groups.ts";

test("every kind of point may be chosen, once", () => {
  expect([...KINDS_IN_ORDER].sort()).toEqual([...POINT_KINDS].sort());
});
