import {
  ANSWER_CODES,
  DESK_CODES,
  DUE_CODES,
  FAILURE_CODES,
  FORMULA_CODES,
  IMPORT_CODES,
  JUDGE_CODES,
  JUDGE_PROBLEM_CODES,
  LINT_CODES,
  PARTICULAR_CODES,
  PROBLEM_CODES,
  SHAPE_CODES,
} from "@roundbook/schemas";
import { describe, expect, it } from "vitest";
import { deskEnglish } from "./desk.ts";
import { ENGLISH } from "./en.ts";
import { CHECKLIST_WORDS } from "./en-checklist.ts";
import { DESK_WORDS } from "./en-desk.ts";
import { IMPORT_WORDS } from "./en-import.ts";
import { english, messagesOf } from "./messages.tsx";

/** The round's words and the desk's. */
const ALL: Readonly<Record<string, string>> = {
  ...ENGLISH,
  ...CHECKLIST_WORDS,
  ...IMPORT_WORDS,
  ...DESK_WORDS,
};
/** What a caretaker can meet on the round: worded without the desk's part. */
const ON_THE_ROUND = { ...JUDGE_CODES, ...JUDGE_PROBLEM_CODES, ...FAILURE_CODES, ...DUE_CODES };

const LISTS = {
  ANSWER_CODES,
  DESK_CODES,
  DUE_CODES,
  FAILURE_CODES,
  FORMULA_CODES,
  IMPORT_CODES,
  JUDGE_CODES,
  JUDGE_PROBLEM_CODES,
  PARTICULAR_CODES,
  PROBLEM_CODES,
  SHAPE_CODES,
  LINT_CODES: Object.fromEntries(
    Object.entries(LINT_CODES).map(([code, { params }]) => [code, params]),
  ),
};

/** Every code with every parameter that some list says it may have. */
const params = new Map<string, Set<string>>();
for (const list of Object.values(LISTS)) {
  for (const [code, names] of Object.entries(list)) {
    params.set(code, new Set([...(params.get(code) ?? []), ...names]));
  }
}
const blanks = (message: string) => [...message.matchAll(/\{(\w+)/g)].map(([, name]) => name ?? "");

describe("the English catalogue", () => {
  it.each(Object.entries(LISTS))("words every code of %s", (_, list) => {
    expect(Object.keys(list).filter((code) => !(code in ALL))).toEqual([]);
  });

  it("words what is met on the round without the words of the desk", () => {
    expect(Object.keys(ON_THE_ROUND).filter((code) => !english.has(code))).toEqual([]);
  });

  it("mentions only parameters its code has", () => {
    const wrong = [...params].flatMap(([code, names]) =>
      blanks(ALL[code] ?? "")
        .filter((name) => !names.has(name))
        .map((name) => `${code}: ${name}`),
    );
    expect(wrong).toEqual([]);
  });

  it("speaks plainly: no exclamation, no I or we, and no word that certifies", () => {
    const loud = /!|\b(I|we|our|safe|compliant|certified|template|ticket|item)\b/i;
    expect(Object.values(ALL).filter((message) => loud.test(message))).toEqual([]);
  });
});

describe("a message", () => {
  it("prints numbers, units and one of two words by number", () => {
    expect(english.t("photo.shown", { number: 2, title: "Lead" })).toBe("Photo 2 of Lead");
    expect(english.t("answer.photos", { count: 1 })).toBe("1 photo");
    expect(english.t("answer.photos", { count: 3 })).toBe("3 photos");
    const by = { value: 0.241, comparator: "", bound: 0.233, by: 0.008, unit: "Ohm" };
    expect(english.say({ code: "above-max", params: by })).toBe("0.008\u00a0Ω above.");
  });

  it("leaves out words whose parameter is missing", () => {
    const say = (nearest: string | null) =>
      deskEnglish.say({ code: "unknown-keyword", params: { keyword: "titel", nearest } });
    expect(say("title")).toBe("“titel” is no word of a checklist; nearest: “title”.");
    expect(say(null)).toBe("“titel” is no word of a checklist.");
  });

  it("of a code nobody knows says so instead of nothing", () => {
    expect(english.say({ code: "from-the-future", params: {} })).toContain("from-the-future");
  });

  it("may come from another language with the same codes", () => {
    const other = messagesOf({ ...ENGLISH, "answer.ok": "In Ordnung" });
    expect(other.t("answer.ok")).toBe("In Ordnung");
    expect(other.t("answer.not-ok")).toBe("Not OK");
  });
});
