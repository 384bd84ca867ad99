import { describe, expect, it, test } from "vitest";
import { EVERY_KIND } from "../testing/every-kind.ts";
import { EXTENSION_LEAD } from "../testing/extension-lead.ts";
import { LEAVES_AND_SOCKETS } from "../testing/leaves-and-sockets.ts";
import { PLUG_BLOCK } from "../testing/plug-block.ts";
import { turned } from "../testing/turned.ts";
import { issueDocument } from "./issue-document.ts";
import { lintWording } from "./lint/wording.ts";
import type { Checklist } from "./meta-schema.ts";
import { resolveBlocks } from "./resolve-blocks.ts";
import { translatableTexts } from "./texts.ts";
import { fallbacks, worded, wordedText } from "./worded.ts";

const DOCS = [EVERY_KIND, EXTENSION_LEAD, LEAVES_AND_SOCKETS];

it.each([
  ["cy-GB", ["cy-gb", "cy"]],
  ["zh-Hant-CN-x-private1", ["zh-hant-cn-x-private1", "zh-hant-cn", "zh-hant", "zh"]],
  ["de", ["de"]],
])("%s is served by %j, the closest first", (language, chain) => {
  expect(fallbacks(language)).toEqual(chain);
});

describe("a text in a language", () => {
  const title = (language: string, doc = LEAVES_AND_SOCKETS) =>
    worded(doc, language).properties.gap_top?.title;

  it.each([
    ["cy-GB", "Bwlch uchaf"],
    ["CY-gb", "Bwlch uchaf"],
    ["cy-GB-north", "Bwlch uchaf"],
    ["cy-AR", "Bwlch ar y brig"],
    ["cy", "Bwlch ar y brig"],
    ["en", "Gap at the top"],
    ["fr", "Gap at the top"],
    ["", "Gap at the top"],
    ["constructor", "Gap at the top"],
  ])("is for %s %s", (language, text) => {
    expect(title(language)).toBe(text);
    expect(wordedText(LEAVES_AND_SOCKETS, language, "/properties/gap_top/title")).toBe(text);
  });

  it("falls back text by text", () => {
    expect(worded(LEAVES_AND_SOCKETS, "cy-GB").title).toBe("Drws a socedi");
    expect(worded(LEAVES_AND_SOCKETS, "cy-GB").properties.hinges?.title).toBe("Hinges");
  });

  it("is the document's own for those who speak its language, before a wider one", () => {
    const doc = { ...LEAVES_AND_SOCKETS, language: "cy-PT" };
    expect(title("cy-PT", doc)).toBe("Gap at the top");
    expect(title("cy-GB", doc)).toBe("Bwlch uchaf");
  });
});

test("every text is worded but band titles, which are data and worded only for show", () => {
  for (const doc of DOCS.map(turned)) {
    const shown = translatableTexts(worded(doc, "cy"));
    for (const [index, { pointer, text }] of translatableTexts(doc).entries()) {
      const other = [...text].reverse().join("");
      const isBand = pointer.includes("/bands/");
      expect(shown[index]).toEqual({ pointer, text: isBand ? text : other });
      expect(wordedText(doc, "cy", pointer)).toBe(other);
    }
  }
});

test("ids, options and rules are untouched: only texts differ", () => {
  for (const doc of DOCS.map(turned)) {
    const back = (one: Checklist): unknown => ({ ...turned(one), wording: null });
    const twice = worded(turned(worded(doc, "cy")), "cy");
    expect(back(twice)).toEqual(back(doc));
  }
});

test("a pointer to no text is a mistake of the program", () => {
  expect(() => wordedText(EVERY_KIND, "cy", "/properties/closer/oneOf/0/const")).toThrow(
    RangeError,
  );
});

test("texts come in the order of the sheet", () => {
  const pointers = translatableTexts(LEAVES_AND_SOCKETS).map(({ pointer }) => pointer);
  expect(pointers.slice(0, 12)).toEqual([
    "/title",
    "/description",
    "/cautions/0",
    "/particulars/sockets/title",
    "/particulars/fitted/title",
    "/properties/label/title",
    "/properties/water/title",
    "/properties/water/limits/0/basis",
    "/groups/0/title",
    "/groups/0/repeat/each",
    "/groups/0/repeat/members/0/title",
    "/groups/0/repeat/members/1/title",
  ]);
});

test("what wording names in no text, and what it leaves out, is told", () => {
  const cy = {
    "/titel": "x",
    "/properties/hinges/maximum": "x",
    "/properties/plate/items/oneOf/0/const": "x",
    title: "x",
  };
  const found = lintWording({ ...LEAVES_AND_SOCKETS, wording: { cy } });
  const missing = translatableTexts(LEAVES_AND_SOCKETS).length;
  expect(found).toEqual([
    {
      pointer: "/wording/cy/~1titel",
      code: "wording-unknown-place",
      params: { place: "/titel", nearest: "/title" },
    },
    {
      pointer: "/wording/cy/~1properties~1hinges~1maximum",
      code: "wording-not-a-text",
      params: { place: "/properties/hinges/maximum" },
    },
    {
      pointer: "/wording/cy/~1properties~1plate~1items~1oneOf~10~1const",
      code: "wording-not-a-text",
      params: { place: "/properties/plate/items/oneOf/0/const" },
    },
    {
      pointer: "/wording/cy/title",
      code: "wording-unknown-place",
      params: { place: "title", nearest: "/title" },
    },
    { pointer: "/wording/cy", code: "wording-incomplete", params: { language: "cy", missing } },
  ]);
});

test("wording is whole when the closest languages have every text between them", () => {
  for (const doc of DOCS.map(turned)) {
    expect(lintWording({ ...doc, wording: { ...doc.wording, "cy-GB": {} } })).toEqual([]);
    expect(lintWording(issueDocument(doc))).toEqual([]);
  }
  const british = { "en-GB": { "/title": "Door and sockets" } };
  expect(lintWording({ ...LEAVES_AND_SOCKETS, wording: british })).toEqual([]);
  const included = { ...LEAVES_AND_SOCKETS, include: [{ block: "plug" }] };
  const resolved = resolveBlocks(included, () => PLUG_BLOCK);
  expect(resolved.ok && lintWording(resolved.value).map(({ code }) => code)).toEqual([
    "wording-incomplete",
    "wording-incomplete",
  ]);
});
