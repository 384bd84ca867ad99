import { expect, test } from "vitest";
import { addGroup, addPoint } from "./commands.ts";
import { emptyDocument } from "./draft-document.ts";
import { readDocument } from "./read-document.ts";

test("a document written out and read again is the same document", () => {
  const grouped = addGroup(emptyDocument("Ladder"), "Look");
  const { document } = addPoint(grouped, "reading", "Length", "look");
  expect(readDocument(JSON.stringify(document, null, 2))).toEqual({ ok: true, document });
});

test("an issued document is read without the answer types it carries", () => {
  const text = JSON.stringify({ ...emptyDocument("Ladder"), $defs: { check: {} } });
  expect(readDocument(text)).toEqual({ ok: true, document: emptyDocument("Ladder") });
});

test("what is no JSON says where it stops being read", () => {
  expect(readDocument('{\n  "title": "Ladder",\n  oops\n}')).toMatchObject({
    ok: false,
    line: 3,
    column: 3,
  });
  expect(readDocument('{ "title": ')).toMatchObject({ ok: false, line: 1 });
});

test("a document that the page could not show is refused, however deep its fault lies", () => {
  const faults = {
    a: { title: "A", $ref: "#/$defs/nope" },
    b: { title: "B", $ref: "#/$defs/reading", limits: [null], quantity: {} },
    c: { title: "C", $ref: "#/$defs/choice", oneOf: [{ const: 1, title: "One" }], ask: 3 },
  };
  const read = readDocument(
    JSON.stringify({ title: 3, properties: faults, groups: [{ id: "g", title: "G" }] }),
  );
  expect(read.ok || ("problems" in read && read.problems.map(({ pointer }) => pointer))).toEqual([
    "/groups/0",
    "/title",
    "/properties/a/$ref",
    "/properties/b/limits/0",
    "/properties/b/quantity",
    "/properties/c/oneOf/0/const",
    "/properties/c/ask",
  ]);
});

test("a document that is not complete yet can be read", () => {
  const document = addPoint(emptyDocument("Ladder"), "reading", "Length", null).document;
  const { reading: _, ...rest } = {
    ...document,
    values: { length: { title: "Length" } },
    reading: 1,
  };
  expect(readDocument(JSON.stringify(rest)).ok).toBe(true);
});

test("JSON that is no checklist names each place that is wrong", () => {
  const text = JSON.stringify({
    title: "Ladder",
    properties: { feet: { title: "Feet" }, rungs: 3 },
  });
  expect(readDocument(text)).toEqual({
    ok: false,
    problems: [
      { pointer: "/properties/feet", code: "missing-keyword", params: { keyword: "$ref" } },
      { pointer: "/properties/rungs", code: "wrong-type", params: { expected: ["object"] } },
    ],
  });
  expect(readDocument("[]")).toMatchObject({ problems: [{ pointer: "", code: "wrong-type" }] });
});
