import { translatableTexts, worded } from "@roundbook/schemas";
import fc from "fast-check";
import { expect, test } from "vitest";
import { COMMANDS, drawing, inWelsh, numbered, ofText, wholeList } from "../testing/edits.ts";
import { addGroup, addPoint, changePoint, setMember } from "./commands.ts";
import { type DraftDocument, emptyDocument, optionsOf, withOptions } from "./draft-document.ts";
import { followWording } from "./follow-wording.ts";
import { begin, change, type History, redo, undo } from "./history.ts";

/** What is worded otherwise than what it words was worded at first, or words nothing. */
const astray = (list: DraftDocument, things: ReadonlySet<string>): readonly unknown[] => {
  const texts = translatableTexts(list);
  const cy = list.wording?.cy ?? {};
  const places = new Set(texts.map(({ pointer }) => pointer));
  return [
    ...Object.keys(cy).filter((pointer) => !places.has(pointer)),
    ...texts.flatMap(({ pointer, text }) => {
      const number = ofText(text);
      const first = number && things.has(number) ? inWelsh(text) : undefined;
      return cy[pointer] === first ? [] : [{ pointer, text, cy: cy[pointer] }];
    }),
  ];
};

const thingsOf = (list: DraftDocument): ReadonlySet<string> =>
  new Set(translatableTexts(list).flatMap((one) => ofText(one.text) ?? []));

const DRAWN = fc.array(fc.nat(1000), { minLength: 12, maxLength: 12 });

const step = fc.record({
  command: fc.oneof(
    { weight: 8, arbitrary: fc.constantFrom(...Object.keys(COMMANDS)) },
    { weight: 1, arbitrary: fc.constantFrom("undo", "redo") },
  ),
  drawn: DRAWN,
});

test("whatever is edited, undone and done again, what stands keeps its wording, what goes takes it", () => {
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 30 }), (steps) => {
      const text = numbered();
      const first = wholeList(text);
      const things = thingsOf(first);
      let history: History<DraftDocument> = begin(first);
      for (const { command, drawn } of steps) {
        const { present } = history;
        const next = COMMANDS[command]?.(present, drawing(drawn), text);
        if (next) history = change(history, followWording(present, next));
        else history = command === "undo" ? undo(history) : redo(history);
        expect(astray(history.present, things)).toEqual([]);
      }
    }),
    { seed: 20261201, numRuns: 300 },
  );
});

test.each(Object.keys(COMMANDS))(
  "after %s alone every wording stands with what it words",
  (name) => {
    fc.assert(
      fc.property(DRAWN, (drawn) => {
        const text = numbered();
        const first = wholeList(text);
        const next = COMMANDS[name]?.(first, drawing(drawn), text) ?? first;
        expect(astray(followWording(first, next), thingsOf(first))).toEqual([]);
      }),
      { seed: 20261201, numRuns: 40 },
    );
  },
);

const three = (): DraftDocument => {
  const { document } = addPoint(emptyDocument("Chair"), "choice", "Back", null);
  const titles = ["Da", "Wedi treulio", "Wedi torri"];
  const places = titles.map((title, at) => [`/properties/back/oneOf/${at}/title`, title]);
  return { ...document, language: "en", wording: { cy: Object.fromEntries(places) } };
};

test("options that change places are not worded as each other", () => {
  const list = three();
  const next = changePoint(list, "back", (point) =>
    withOptions(point, optionsOf(point).toReversed()),
  );
  const options = worded(followWording(list, next), "cy").properties.back?.oneOf;
  expect(options?.slice(0, 3)).toEqual([
    { const: "broken", title: "Wedi torri" },
    { const: "worn", title: "Wedi treulio" },
    { const: "good", title: "Da" },
  ]);
});

test("a document that brings wording of its own is taken as it is", () => {
  const list = three();
  const pasted = JSON.parse(
    JSON.stringify(
      changePoint(list, "back", (point) => withOptions(point, optionsOf(point).toReversed())),
    ),
  ) as DraftDocument;
  expect(followWording(list, pasted)).toBe(pasted);
});

test("wording left over from a text that is gone never words a new one", () => {
  const list = { ...three(), wording: { cy: { "/groups/0/title": "Hen", "/minute": "Munud" } } };
  expect(followWording(list, addGroup(list, "Legs")).wording).toEqual({
    cy: { "/minute": "Munud" },
  });
});

test("a caution that is written anew loses its wording rather than keep another's", () => {
  const list: DraftDocument = {
    ...emptyDocument("Chair"),
    cautions: ["Do not stand on it."],
    wording: { cy: { "/cautions/0": "Peidiwch â sefyll arni." } },
  };
  const next = setMember(list, "cautions", ["Hot surface."]);
  expect(followWording(list, next).wording).toEqual({ cy: {} });
});

test("groups of a block lose wording of the draft's when they move", () => {
  const list: DraftDocument = {
    ...addGroup(emptyDocument("Chair"), "Legs"),
    include: [{ block: "shared" }],
    wording: { cy: { "/groups/1/title": "Cefn", "/properties/tilt/title": "Gogwydd" } },
  };
  expect(followWording(list, setMember(list, "minutes", 3))).toMatchObject({
    wording: list.wording,
  });
  expect(followWording(list, addGroup(addGroup(list, "A"), "B")).wording).toEqual({
    cy: { "/properties/tilt/title": "Gogwydd" },
  });
});
