import { expect, test } from "vitest";
import { type DraftDocument, emptyDocument } from "./draft-document.ts";
import { sampleParticulars } from "./sample.ts";

test("a sample lies within what a particular may be", () => {
  const document: DraftDocument = {
    ...emptyDocument("Lead"),
    particulars: {
      length: { title: "Length", type: "number", minimum: 0.5, maximum: 100 },
      load: { title: "Load", type: "number", minimum: 200, maximum: 500 },
      csa: { title: "Cross-section", type: "number", enum: [0.75, 1, 1.5, 2.5] },
      class: { title: "Class", enum: ["I", "II"] },
      outdoors: { title: "Outdoors", type: "boolean" },
      maker: { title: "Maker", type: "string" },
    },
  };
  expect(sampleParticulars(document)).toEqual({
    length: 10,
    load: 200,
    csa: 1,
    class: "I",
    outdoors: true,
  });
});
