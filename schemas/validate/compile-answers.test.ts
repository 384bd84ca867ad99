import fc from "fast-check";
import { expect, it } from "vitest";
import { validateAnswers } from "../checklist/validate-answers.ts";
import { anyAnswers } from "../testing/any-answers.ts";
import { EVERY_KIND } from "../testing/every-kind.ts";
import { LEAVES_AND_SOCKETS } from "../testing/leaves-and-sockets.ts";
import { compileAnswers } from "./index.ts";

it.each([
  ["gap_top", "unknown-member", { point: "gap_top", member: null, members: ["left", "right"] }],
  [
    "gap_top@top",
    "unknown-member",
    { point: "gap_top", member: "top", members: ["left", "right"] },
  ],
  ["plate@13", "unknown-member", { point: "plate", member: "13", members: ["1–12"] }],
  ["closing@1", "unknown-member", { point: "closing", member: "1", members: [] }],
  ["a/b~c", "unknown-point", { point: "a/b~c", nearest: null }],
])("an answer named %s is told by its own name", (name, code, params) => {
  const found = compileAnswers(LEAVES_AND_SOCKETS)({ [name]: "ok" });
  expect(found).toEqual([{ pointer: expect.stringContaining("/"), code, params }]);
  expect(validateAnswers(LEAVES_AND_SOCKETS, { [name]: "ok" })).toEqual(found);
});

it.each([EVERY_KIND, LEAVES_AND_SOCKETS].map((doc) => [doc.title, doc] as const))(
  "%s: the compiled check of answers finds the same places as the interpreted one",
  (_, doc) => {
    const compiled = compileAnswers(doc);
    const pointers = (found: readonly { pointer: string }[]) => found.map(({ pointer }) => pointer);
    fc.assert(
      fc.property(anyAnswers(doc), (answers) => {
        expect(pointers(compiled(answers)).sort()).toEqual(
          pointers(validateAnswers(doc, answers)).sort(),
        );
      }),
      { numRuns: 1500, seed: 20_264 },
    );
  },
);
