import { problem } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { addGroup } from "../model/commands.ts";
import { emptyDocument } from "../model/draft-document.ts";
import { blankOf } from "./problem-place.ts";

const document = addGroup(emptyDocument("Door"), "Leaves");

test.each([
  ["/properties/gap/several/count", "gap/several/count"],
  ["/properties/found/items/oneOf/1", "found/options"],
  ["/properties/hot/ask/wait", "hot/ask/wait/atLeast"],
  ["/properties/hot/limits/0/sameAsLast/within", "hot/limits/0/sameAsLast/within"],
  ["/properties/hot/limits/0/decision", "hot/limits/0/decision/uncertainty"],
  ["/properties/due/limits/1/notAfter/from", "due/limits/1/notAfter"],
  ["/stops/0/groups/2", "stops/0/targets"],
  ["/groups/0/repeat/count", "groups/leaves/repeat/count"],
])("what is wrong at %s is put right in the blank %s", (pointer, blank) => {
  expect(blankOf(document, problem(pointer, "any"))).toBe(blank);
});
