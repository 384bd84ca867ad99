import { durationWords, english, printNumber, printUnit } from "@roundbook/runner/form";
import type {
  GradeDefinition,
  ParticularDefinition,
  PointDefinition,
  ScoreDefinition,
  ValueDefinition,
} from "@roundbook/schemas";
import { f } from "../messages/facts.ts";
import { particularKind } from "./around-edit.ts";
import { type DraftDocument, optionsOf } from "./draft-document.ts";
import { formulaWords, nameWords } from "./formula-words.ts";

const facts = (...words: readonly (string | false | undefined)[]): string[] =>
  words.filter((one): one is string => typeof one === "string" && one !== "");

export const duration = (iso: string): string => durationWords(english.t, iso);

export const gradeWords = (grade: GradeDefinition): string =>
  grade.means === "by-a-date" && grade.within
    ? f("grade.by-a-date-within", { within: duration(grade.within) })
    : f(`grade.${grade.means}`);

/** How a point is asked, a line for each thing that can be told apart. */
export const pointFacts = (document: DraftDocument, point: PointDefinition): string[] => {
  const { quantity, ask = {}, grade } = point;
  const { min, max } = quantity?.plausible ?? {};
  return facts(
    quantity && f("fact.unit", { unit: printUnit(quantity.unit) }),
    quantity?.alsoIn && f("fact.also", { units: quantity.alsoIn.map(printUnit).join(", ") }),
    quantity?.decimals !== undefined && f("fact.decimals", { count: quantity.decimals }),
    (min !== undefined || max !== undefined) &&
      f("fact.plausible", { min: min ?? "…", max: max ?? "…" }),
    point.minimum !== undefined &&
      f("fact.range", { minimum: point.minimum, maximum: point.maximum ?? "…" }),
    optionsOf(point).length > 0 &&
      f(point.items ? "fact.options-several" : "fact.options", {
        options: optionsOf(point)
          .map((option) => option.title)
          .join(", "),
      }),
    point.maxLength !== undefined && f("fact.length", { count: point.maxLength }),
    point.pattern && f("fact.pattern", { pattern: point.pattern }),
    point.several &&
      f("fact.several", {
        count:
          typeof point.several.count === "number"
            ? point.several.count
            : formulaWords(document, point.several.count),
        combine: f(`combine.${point.several.combine}`),
      }),
    point.calculate && f("fact.calculate", { formula: formulaWords(document, point.calculate) }),
    point.block && f("fact.block", { block: point.block }),
    ask.wait && f("fact.wait", { from: ask.wait.atLeast ?? 0, to: ask.wait.atMost ?? "…" }),
    ask.when && f("fact.when", { formula: formulaWords(document, ask.when) }),
    f(ask.mandatory ? "fact.mandatory" : "fact.optional"),
    ask.absentAllowed &&
      f("fact.absent", {
        reasons: ask.absentAllowed
          .map((reason) => english.t(`absent.${reason}`).toLowerCase())
          .join(", "),
      }),
    ...(ask.evidence ?? []).map((rule) =>
      f(`fact.${rule.kind}`, { verdicts: rule.on.map((on) => f(`verdict.${on}`)).join(", ") }),
    ),
    grade && f("fact.grade", { grade: gradeWords(grade) }),
  );
};

/** What a particular may be: "a number in m", "0.5 to 100". */
export const particularFacts = (definition: ParticularDefinition): string[] => {
  const { unit, enum: choices, minimum, maximum, title, description } = definition;
  const kind = f(`kind.${particularKind(definition)}`);
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
  ).join(", ");

export const scoreFacts = (document: DraftDocument, score: ScoreDefinition): string[] =>
  facts(
    score.title,
    f("score.of", { count: score.of.length }),
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
