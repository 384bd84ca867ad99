import { english, printUnit } from "@roundbook/runner/form";
import type { PointDefinition } from "@roundbook/schemas";
import { f } from "../messages/facts.ts";
import { type DraftDocument, optionsOf } from "./draft-document.ts";
import { facts, gradeWords } from "./fact-words.ts";
import { formulaWords } from "./formula-words.ts";

/** What a point says beside its question, the kind of its answer and its limits. */
export const ASPECTS = [
  "quantity",
  "range",
  "options",
  "length",
  "pattern",
  "several",
  "calculate",
  "block",
  "ask",
  "grade",
] as const;
export type Aspect = (typeof ASPECTS)[number];

const written = (members: object): object =>
  Object.fromEntries(Object.entries(members).filter(([, one]) => one !== undefined));

/** The members of a point that an aspect of it is written in. */
export const membersOf = (aspect: Aspect, point: PointDefinition): object => {
  const { minimum, maximum, oneOf, items, maxLength } = point;
  switch (aspect) {
    case "range":
      return written({ minimum, maximum });
    case "options":
      return written({ oneOf, items });
    case "length":
      return written({ maxLength });
    default:
      return written({ [aspect]: point[aspect] });
  }
};

const ofOptions = (point: PointDefinition): string[] => {
  const options = optionsOf(point).map((option) => option.title);
  const absent = (point.oneOf ?? []).some((option) => "$ref" in option);
  return facts(
    options.length > 0 &&
      f(point.items ? "fact.options-several" : "fact.options", { options: options.join(", ") }),
    options.length > 0 && !point.items && !absent && f("fact.never-absent"),
  );
};

const ofQuantity = ({ quantity }: PointDefinition): string[] => {
  const { min, max } = quantity?.plausible ?? {};
  return facts(
    quantity && f("fact.unit", { unit: printUnit(quantity.unit) }),
    quantity?.alsoIn && f("fact.also", { units: quantity.alsoIn.map(printUnit).join(", ") }),
    quantity?.decimals !== undefined && f("fact.decimals", { count: quantity.decimals }),
    (min !== undefined || max !== undefined) &&
      f("fact.plausible", { min: min ?? "…", max: max ?? "…" }),
  );
};

const ofAsk = (document: DraftDocument, { ask = {} }: PointDefinition): string[] =>
  facts(
    ask.wait && f("fact.wait", { from: ask.wait.atLeast ?? 0, to: ask.wait.atMost ?? "…" }),
    ask.when && f("fact.when", { formula: formulaWords(document, ask.when) }),
    f(ask.mandatory ? "fact.mandatory" : "fact.optional"),
    ask.absentAllowed &&
      f("fact.absent", {
        reasons: ask.absentAllowed
          .map((reason) => english.t(`absent.${reason}`).toLowerCase())
          .join(", "),
      }),
    ...(ask.evidence ?? []).map(({ kind, on, atLeast = 1 }) => {
      const verdicts = on.map((verdict) => f(`verdict.${verdict}`)).join(", ");
      return atLeast > 1
        ? f(`fact.${kind}-many`, { count: atLeast, verdicts })
        : f(`fact.${kind}`, { verdicts });
    }),
  );

/** What one aspect of a point says, a line for each thing that can be told apart. */
export const aspectFacts = (
  document: DraftDocument,
  point: PointDefinition,
  aspect: Aspect,
): string[] => {
  const { minimum, maximum, several, calculate, block, grade } = point;
  switch (aspect) {
    case "quantity":
      return ofQuantity(point);
    case "options":
      return ofOptions(point);
    case "ask":
      return ofAsk(document, point);
    case "range":
      return facts(
        (minimum !== undefined || maximum !== undefined) &&
          f("fact.range", { minimum: minimum ?? "…", maximum: maximum ?? "…" }),
      );
    case "length":
      return facts(point.maxLength !== undefined && f("fact.length", { count: point.maxLength }));
    case "pattern":
      return facts(point.pattern && f("fact.pattern", { pattern: point.pattern }));
    case "several":
      return facts(
        several &&
          f("fact.several", {
            count:
              typeof several.count === "number"
                ? several.count
                : formulaWords(document, several.count),
            combine: f(`combine.${several.combine}`),
          }),
      );
    case "calculate":
      return facts(
        calculate && f("fact.calculate", { formula: formulaWords(document, calculate) }),
      );
    case "block":
      return facts(block && f("fact.block", { block }));
    case "grade":
      return facts(grade && f("fact.grade", { grade: gradeWords(grade) }));
  }
};

/** How a point is asked, a line for each thing that can be told apart. */
export const pointFacts = (document: DraftDocument, point: PointDefinition): string[] =>
  ASPECTS.flatMap((aspect) => aspectFacts(document, point, aspect));
