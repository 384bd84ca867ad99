import { printUnit } from "@roundbook/runner/form";
import { type DraftDocument, optionsOf } from "./draft-document.ts";

const TOKENS =
  /'[^']*'|"[^"]*"|(?:asset\.|answers\.)?[a-z][a-z0-9_]*|==|!=|<=|>=|&&|\|\||[-*!]|\s+|./g;

const OPERATORS: ReadonlyMap<string, string> = new Map([
  ["==", "is"],
  ["!=", "is not"],
  ["<=", "≤"],
  [">=", "≥"],
  ["&&", "and"],
  ["||", "or"],
  ["*", "×"],
  ["-", "−"],
]);

/** "when it is a certificate, then its gap, else 4 mm". */
const BRANCHES: ReadonlyMap<string, string> = new Map([
  ["?", ", then"],
  [":", ", else"],
]);

const member = <T>(map: Readonly<Record<string, T>> | undefined, name: string): T | undefined =>
  map && Object.hasOwn(map, name) ? map[name] : undefined;

/** A title within a sentence: "Protection class" is read on as "protection class", "PAT" is not. */
const within = (title: string): string =>
  /^[A-Z][a-z]/.test(title) ? title.charAt(0).toLowerCase() + title.slice(1) : title;

/** What a full name of formulas stands for, in words; undefined when nothing is called that. */
export const nameWords = (document: DraftDocument, name: string): string | undefined => {
  const [space, local] = name.includes(".") ? name.split(".", 2) : ["", name];
  if (local === undefined) return undefined;
  const title =
    space === "asset"
      ? member(document.particulars, local)?.title
      : space === "answers"
        ? member(document.properties, local)?.title
        : member(document.values, local)?.title;
  return title && within(title);
};

const choiceTitle = (document: DraftDocument, value: string): string => {
  if (value === "ok") return "OK";
  if (value === "not-ok") return "not OK";
  for (const point of Object.values(document.properties)) {
    const option = optionsOf(point).find((one) => one.const === value);
    if (option) return option.title;
  }
  return value;
};

/** A formula as people would say it, titles in place of names: "protection class is I". */
export const formulaWords = (document: DraftDocument, source: string): string =>
  (source.match(TOKENS) ?? [])
    .map((token) => {
      if (/^['"]/.test(token)) return choiceTitle(document, token.slice(1, -1));
      if (token === "!") return "not ";
      return BRANCHES.get(token) ?? OPERATORS.get(token) ?? nameWords(document, token) ?? token;
    })
    .join("")
    .replace(/\s*(, (?:then|else))(?=\S)/g, "$1 ")
    .replace(/\s+(?=, (?:then|else))/g, "")
    .replace(/\s+/g, " ")
    .trim();

/** The formula with units in place of its names: "Ω + m × Ω/m"; null when it is only figures. */
export const unitSum = (
  source: string,
  unitOfName: (name: string) => string | undefined,
): string | null => {
  let named = 0;
  const words = (source.match(TOKENS) ?? []).map((token) => {
    const unit = unitOfName(token);
    if (unit !== undefined) {
      named += 1;
      return printUnit(unit) || "1";
    }
    return OPERATORS.get(token) ?? token;
  });
  return named === 0 ? null : words.join("").replace(/\s+/g, " ").trim();
};
