import type { ParticularDefinition, ScoreDefinition, ValueDefinition } from "@roundbook/schemas";
import type { DraftDocument } from "./draft-document.ts";
import { readNumber } from "./particular-fields.ts";

/** Lines of text as definitions and back: what a manager types around the points of a checklist. */
export type Lines<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly line: number; readonly text: string };

const NAME_OF_LINE = /^([a-z][a-z0-9_]{0,62})\s*[:=]\s*(.+)$/;

const readLines = <T>(
  text: string,
  read: (name: string, rest: string) => T | undefined,
): Lines<Record<string, T>> => {
  const value: Record<string, T> = {};
  for (const [at, line] of text.split("\n").entries()) {
    if (line.trim() === "") continue;
    const match = NAME_OF_LINE.exec(line.trim());
    const made = match?.[1] && match[2] ? read(match[1], match[2].trim()) : undefined;
    if (!match?.[1] || made === undefined || Object.hasOwn(value, match[1]))
      return { ok: false, line: at + 1, text: line.trim() };
    value[match[1]] = made;
  }
  return { ok: true, value };
};

/** "length: Length, m" is a number with a unit; "class: Class, I / II" a choice of words. */
export const readParticulars = (text: string): Lines<Record<string, ParticularDefinition>> => {
  let order = 0;
  return readLines(text, (_, rest) => {
    const [title = "", ...more] = rest.split(",").map((part) => part.trim());
    const last = more.join(", ");
    order += 1;
    if (title === "") return undefined;
    if (last === "") return { title, order, type: "string" };
    if (!last.includes("/") || /^[\w.[\]]+\/[\w.[\]]+$/.test(last))
      return { title, order, type: "number", unit: last };
    const choices = last.split("/").map((choice) => choice.trim());
    const numbers = choices.map(readNumber);
    return numbers.every((one) => one !== undefined)
      ? { title, order, type: "number", enum: numbers as number[] }
      : { title, order, enum: choices };
  });
};

export const printParticulars = (definitions: DraftDocument["particulars"]): string =>
  Object.entries(definitions ?? {})
    .map(([name, { title, unit, enum: choices }]) => {
      const last = choices ? choices.join(" / ") : (unit ?? "");
      return `${name}: ${title}${last === "" ? "" : `, ${last}`}`;
    })
    .join("\n");

/** "joints = 0.1 Ohm" is a constant; anything that is no number before its unit is a formula. */
export const readValues = (
  text: string,
  before: DraftDocument["values"],
): Lines<Record<string, ValueDefinition>> =>
  readLines(text, (name, rest): ValueDefinition | undefined => {
    const old = before?.[name];
    if (old?.table) return old;
    const match = /^(-?\d+(?:[.,]\d+)?)(?:\s+(\S+))?$/.exec(rest);
    const { const: _, formula: __, ...kept } = old ?? {};
    if (match?.[1]) {
      const value = readNumber(match[1]);
      if (value === undefined) return undefined;
      return { ...kept, const: value, ...(match[2] ? { unit: match[2] } : {}) };
    }
    const formula = /^(.*?)\s+in\s+(\S+)$/.exec(rest);
    return {
      ...kept,
      formula: formula?.[1] ?? rest,
      ...(formula?.[2] ? { unit: formula[2] } : {}),
    };
  });

export const printValues = (values: DraftDocument["values"]): string =>
  Object.entries(values ?? {})
    .map(([name, value]) => {
      if (value.const !== undefined)
        return `${name} = ${value.const}${value.unit ? ` ${value.unit}` : ""}`;
      if (value.formula !== undefined)
        return `${name} = ${value.formula}${value.unit ? ` in ${value.unit}` : ""}`;
      return `${name} = table of ${value.table?.rules.length ?? 0} rules`;
    })
    .join("\n");

type Band = ScoreDefinition["bands"][number];
const UNITS = { day: "D", week: "W", month: "M", year: "Y" } as const;

const readNext = (text: string): string | undefined => {
  if (/^at once$/i.test(text)) return "at-once";
  const match = /^(\d{1,3})\s*(day|week|month|year)s?$/i.exec(text);
  if (!match?.[1] || !match[2]) return undefined;
  return `P${match[1]}${UNITS[match[2].toLowerCase() as keyof typeof UNITS]}`;
};

const printNext = (next: string): string => {
  if (next === "at-once") return "at once";
  const match = /^P(\d+)([DWMY])$/.exec(next);
  const unit = Object.entries(UNITS).find(([, code]) => code === match?.[2])?.[0];
  return match && unit ? `${match[1]} ${unit}${match[1] === "1" ? "" : "s"}` : next;
};

/** "86: Three years, pass, 3 years": from which score, its title, outcome and next interval. */
export const readBands = (text: string): Lines<Band[]> => {
  const bands: Band[] = [];
  for (const [at, line] of text.split("\n").entries()) {
    if (line.trim() === "") continue;
    const match = /^(-?\d+(?:[.,]\d+)?)\s*:\s*(.+)$/.exec(line.trim());
    const from = readNumber(match?.[1] ?? "");
    const [title = "", ...more] = (match?.[2] ?? "").split(",").map((part) => part.trim());
    const outcome = more.find((part) => /^(pass|advisory|fail)$/.test(part)) as Band["outcome"];
    const rest = more.filter((part) => part !== outcome);
    const next = rest.length > 0 ? readNext(rest[0] ?? "") : undefined;
    if (from === undefined || title === "" || rest.length > 1 || (rest.length === 1 && !next))
      return { ok: false, line: at + 1, text: line.trim() };
    bands.push({ title, from, ...(outcome ? { outcome } : {}), ...(next ? { next } : {}) });
  }
  return { ok: true, value: bands.sort((a, b) => b.from - a.from) };
};

export const printBands = (bands: readonly Band[]): string =>
  bands
    .map(({ from, title, outcome, next }) =>
      [`${from}: ${title}`, outcome, next && printNext(next)].filter(Boolean).join(", "),
    )
    .join("\n");
