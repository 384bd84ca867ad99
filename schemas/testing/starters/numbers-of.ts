import type { Checklist } from "../../checklist/meta-schema.ts";
import { at } from "../../shared/problem.ts";

/** A number that decides something, with the unit of its place where the place has one. */
export interface PlacedNumber {
  readonly pointer: string;
  readonly number: number;
  readonly unit: string | undefined;
}

const DURATION_PART = /\d+/g;
/** Numbers of a formula that stand alone: not those in texts or names. */
const LITERAL = /(?<![\w.'"])\d+(?:\.\d+)?(?![\w'"])/g;

const inText = (pointer: string, text: string, pattern: RegExp): PlacedNumber[] =>
  [...text.replace(/'[^']*'|"[^"]*"/g, "").matchAll(pattern)].map(([found]) => ({
    pointer: `${pointer}#${found}`,
    number: Number(found),
    unit: undefined,
  }));

const inside = (pointer: string, value: unknown, unit: string | undefined): PlacedNumber[] => {
  if (typeof value === "number") return [{ pointer, number: value, unit }];
  if (typeof value === "string") return inText(pointer, value, LITERAL);
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => inside(at(pointer, key), part, unit));
};

const PROSE = new Set(["basis", "accept", "severity", "title"]);

/** Every number of limits, waits, counts of readings, values, tables and bands. */
export const numbersOf = (doc: Checklist): readonly PlacedNumber[] => {
  const found: PlacedNumber[] = [];
  for (const [name, point] of Object.entries(doc.properties)) {
    const place = at("/properties", name);
    const unit = point.quantity?.unit;
    for (const [index, limit] of (point.limits ?? []).entries()) {
      for (const [keyword, part] of Object.entries(limit)) {
        if (PROSE.has(keyword)) continue;
        const pointer = at(place, "limits", index, keyword);
        if (keyword === "notBefore" || keyword === "notAfter") {
          for (const [key, text] of Object.entries(part)) {
            if (key !== "from") found.push(...inText(at(pointer, key), text, DURATION_PART));
          }
        } else found.push(...inside(pointer, part, unit));
      }
    }
    if (point.several) {
      found.push(...inside(at(place, "several", "count"), point.several.count, undefined));
    }
    if (point.ask?.wait) found.push(...inside(at(place, "ask", "wait"), point.ask.wait, "s"));
    found.push(...inside(at(place, "ask", "when"), point.ask?.when, undefined));
    found.push(...inside(at(place, "calculate"), point.calculate, unit));
  }
  for (const [name, value] of Object.entries(doc.values ?? {})) {
    const place = at("/values", name);
    found.push(...inside(at(place, "const"), value.const, value.unit));
    found.push(...inside(at(place, "formula"), value.formula, value.unit));
    for (const [index, rule] of (value.table?.rules ?? []).entries()) {
      found.push(...inside(at(place, "table", "rules", index, "when"), rule.when, undefined));
      found.push(...inside(at(place, "table", "rules", index, "then"), rule.then, value.unit));
    }
  }
  for (const [name, score] of Object.entries(doc.scores ?? {})) {
    for (const [index, band] of score.bands.entries()) {
      found.push(...inside(at("/scores", name, "bands", index, "from"), band.from, undefined));
    }
  }
  return found;
};
