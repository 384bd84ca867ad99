import { durationWords, english, printNumber, printUnit } from "@roundbook/runner/form";
import type {
  GradeDefinition,
  ParticularDefinition,
  ScoreDefinition,
  TableCell,
  TableDefinition,
  ValueDefinition,
} from "@roundbook/schemas";
import { anyOf } from "../messages/any-of.ts";
import { f } from "../messages/facts.ts";
import { particularKind } from "./around-edit.ts";
import type { DraftDocument } from "./draft-document.ts";
import { formulaWords, nameWords } from "./formula-words.ts";

/** The lines there are. */
export const facts = (...words: readonly (string | false | undefined)[]): string[] =>
  words.filter((one): one is string => typeof one === "string" && one !== "");

export const duration = (iso: string): string => durationWords(english.t, iso);

export const gradeWords = ({ means, within }: GradeDefinition): string => {
  if (!within) return f(`grade.${means}`);
  const time = duration(within);
  return means === "by-a-date"
    ? f("grade.by-a-date-within", { within: time })
    : f("grade.within", { grade: f(`grade.${means}`), within: time });
};

/** What a particular may be: "a number in m", "0.5 to 100". */
export const particularFacts = (definition: ParticularDefinition): string[] => {
  const { unit, enum: choices, minimum, maximum, title, description } = definition;
  const { maxLength, pattern } = definition;
  const kind = f(
    definition.type === "integer" ? "kind.integer" : `kind.${particularKind(definition)}`,
  );
  const range =
    minimum !== undefined && maximum !== undefined
      ? f("particular.between", { minimum, maximum })
      : minimum !== undefined
        ? f("particular.from", { minimum })
        : maximum !== undefined && f("particular.to", { maximum });
  return facts(
    title,
    description,
    unit ? f("particular.unit", { kind, unit: printUnit(unit) }) : kind,
    choices && f("particular.choices", { choices: choices.map(String).join(", ") }),
    range,
    maxLength !== undefined && f("fact.length", { count: maxLength }),
    pattern && f("fact.pattern", { pattern }),
  );
};

/** "0.1 Ω", "length × 2 Ω", "from a table of 4 rules by cross-section". */
export const valueWords = (document: DraftDocument, value: ValueDefinition): string => {
  if (value.table) {
    const inputs = value.table.inputs.map((name) => nameWords(document, name) ?? name).join(", ");
    return f("value.table", { count: value.table.rules.length, inputs });
  }
  const amount =
    value.const === undefined
      ? formulaWords(document, value.formula ?? "")
      : printNumber(value.const);
  return value.unit ? `${amount}\u00a0${printUnit(value.unit)}` : amount;
};

const tellsRange = (cell: object): cell is Record<string, unknown> => !Array.isArray(cell);

const cellWords = (cell: TableCell): string => {
  if (typeof cell !== "object") return String(cell);
  if (!tellsRange(cell)) return anyOf((cell as readonly unknown[]).map(String));
  if (cell.any) return f("cell.any");
  const sides = (["min", "exclusiveMin", "max", "exclusiveMax"] as const).flatMap((side) =>
    cell[side] === undefined ? [] : [f(`cell.${side}`, { bound: Number(cell[side]) })],
  );
  return sides.join(" ");
};

/** A table rule by rule: "where class is I and length up to 5: 0.1". */
const tableFacts = (document: DraftDocument, table: TableDefinition | undefined): string[] => {
  if (!table) return [];
  const { policy, aggregate, expect, inputs, rules } = table;
  const names = inputs.map((input) => formulaWords(document, input));
  return facts(
    f("table.inputs", { inputs: names.join(", ") }),
    f(`table.${policy}`),
    aggregate && f(`table.${aggregate}`),
    expect !== undefined && f("table.expect", { count: expect }),
    ...rules.map((rule) => {
      const when = rule.when
        .map((cell, at) => f("table.where", { input: names[at] ?? "…", cell: cellWords(cell) }))
        .join(", ");
      const words = f("table.rule", { when, outcome: rule.then });
      return rule.basis ? f("table.because", { rule: words, basis: rule.basis }) : words;
    }),
  );
};

/** All that a named value is worked out by, each rule of its table too. */
export const wholeValueFacts = (document: DraftDocument, value: ValueDefinition): string[] => [
  ...valueFacts(document, value),
  ...(value.table ? facts(value.unit && f("fact.unit", { unit: printUnit(value.unit) })) : []),
  ...tableFacts(document, value.table),
];

export const valueFacts = (document: DraftDocument, value: ValueDefinition): string[] =>
  facts(
    value.title,
    valueWords(document, value),
    value.basis && f("fact.because", { basis: value.basis }),
  );

export const nextWords = (next: string): string =>
  next === "at-once" ? f("band.next-at-once") : f("band.next", { next: duration(next) });

const bandWords = (band: ScoreDefinition["bands"][number]): string =>
  facts(
    f("band.from", { from: band.from, title: band.title }),
    band.outcome && f(`band.outcome-${band.outcome}`),
    band.next && nextWords(band.next),
    band.basis && f("fact.because", { basis: band.basis }),
  ).join(", ");

export const scoreFacts = (document: DraftDocument, score: ScoreDefinition): string[] =>
  facts(
    score.title,
    f("score.of", { count: score.of.length }),
    f("score.points", {
      titles: score.of.map((name) => document.properties[name]?.title ?? name).join(", "),
    }),
    f(`fact.method-${score.method}`),
    score.weights &&
      f("fact.weights", {
        weights: Object.entries(score.weights)
          .map(([name, weight]) => `${weight} × ${document.properties[name]?.title ?? name}`)
          .join(", "),
      }),
    score.round.decimals === 0
      ? f("score.round-whole", { rule: f(`round.${score.round.rule}`) })
      : f("score.round", { rule: f(`round.${score.round.rule}`), decimals: score.round.decimals }),
    ...score.bands.map(bandWords),
    score.basis && f("fact.because", { basis: score.basis }),
  );
