import { expect, test } from "vitest";
import { addGroup, addPoint, removeGroup, removePoint } from "./commands.ts";
import { type DraftDocument, emptyDocument } from "./draft-document.ts";
import { addStop, changeStop, removeStop, setTargets } from "./stop-edit.ts";

const lead = (): DraftDocument => {
  let document = addGroup(addGroup(emptyDocument("Lead"), "Look"), "Test");
  document = addPoint(document, "check", "Cable", "look").document;
  document = addPoint(document, "check", "Plug", "look").document;
  return addPoint(document, "reading", "Insulation", "test").document;
};
const order = ["cable", "plug", "insulation"];
const stopped = () => addStop(lead(), order, "Do not energise it");

test("a rule begins with the first point stopping the last, and needs two", () => {
  expect(stopped().stops).toEqual([
    { after: ["cable"], on: ["fail"], points: ["insulation"], say: "Do not energise it" },
  ]);
  expect(addStop(lead(), ["cable"], "No").stops).toBeUndefined();
});

test("a rule never stops nothing", () => {
  const aimed = changeStop(stopped(), 0, (stop) => setTargets(stop, [], ["test"]));
  expect(aimed.stops?.[0]).toEqual({
    after: ["cable"],
    on: ["fail"],
    groups: ["test"],
    say: "Do not energise it",
  });
  expect(changeStop(aimed, 0, (stop) => setTargets(stop, [], []))).toEqual(aimed);
});

test("a rule goes with the last point that stops, or that is stopped", () => {
  expect(removePoint(stopped(), "cable").stops).toBeUndefined();
  expect(removePoint(stopped(), "insulation").stops).toBeUndefined();
  expect(removePoint(stopped(), "plug").stops).toEqual(stopped().stops);
  const byGroup = changeStop(stopped(), 0, (stop) => setTargets(stop, [], ["test"]));
  expect(removeGroup(byGroup, "test").stops).toBeUndefined();
  expect(removeStop(stopped(), 0)).not.toHaveProperty("stops");
});
