import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { begin, change, redo, undo } from "./history.ts";

describe("undo and redo", () => {
  test("undoing every change gives the first value, redoing all of them the last", () => {
    fc.assert(
      fc.property(fc.array(fc.integer(), { maxLength: 60 }), (values) => {
        const first = { value: "first" as string | number };
        let history = begin(first);
        for (const value of values) history = change(history, { value });
        const last = history.present;
        for (const _ of values) history = undo(history);
        expect(history.present).toBe(first);
        for (const _ of values) history = redo(history);
        expect(history.present).toBe(last);
      }),
    );
  });

  test("changes with one tag in a row are one step", () => {
    let history = begin("");
    for (const typed of ["E", "Ea", "Ear"]) history = change(history, typed, "title");
    history = change(history, "Earth", null);
    expect(undo(history).present).toBe("Ear");
    expect(undo(undo(history)).present).toBe("");
  });

  test("a new change after an undo ends what was undone", () => {
    let history = change(change(begin(1), 2), 3);
    history = change(undo(history), 4);
    expect(redo(history).present).toBe(4);
    expect(undo(history).present).toBe(2);
  });

  test("the same value again is no step", () => {
    const history = change(begin(1), 1);
    expect(history.past).toEqual([]);
  });
});
