import { readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { canonicalize, utf8 } from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import { filesBelow, realData } from "./folder.ts";

// RFC 8785's test data, Apache-2.0, licence beside it.
const folder = realData("jcs-testdata", "testdata");
const inputs = filesBelow(folder && join(folder, "input"), ".json").map((file) => basename(file));

describe.skipIf(folder === null)("canonical JSON of RFC 8785's own test data", () => {
  const read = (part: string, name: string) => readFileSync(join(folder ?? "", part, name), "utf8");

  test("all six inputs are here", () => {
    expect(inputs).toHaveLength(6);
  });

  test.each(inputs)("%s comes out as published, byte for byte", (name) => {
    const text = canonicalize(JSON.parse(read("input", name)));
    expect(text).toBe(read("output", name));
    const hex = read("outhex", name.replace(".json", ".txt")).replaceAll(/\s+/g, "");
    expect(Buffer.from(utf8(text)).toString("hex")).toBe(hex);
  });
});
