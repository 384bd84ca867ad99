import { parseCivilDate } from "../due/civil.ts";
import type { PatternEngine } from "../patterns/engine-type.ts";
import { nearest, wordBudget } from "../shared/nearest.ts";
import { at, type Problem, problem } from "../shared/problem.ts";
import { splitAnswerName } from "./answer-name.ts";
import { hasShape, isAbsence, isFields, lengthOf } from "./answer-shape.ts";
import { pointKind } from "./guards.ts";
import type { Checklist, PointDefinition } from "./meta-schema.ts";
import { allowsMember, membersSaid, repeatsByPoint } from "./repeats.ts";

type Found = { readonly code: string; readonly params: Problem["params"] } | null;

const found = (code: string, params: Problem["params"]): Found => ({ code, params });

const notAnOption = (options: readonly (string | null)[]): Found =>
  found("answer-not-an-option", { options: options.filter((option) => option !== null) });

/** A choice and each of several choices is exactly one of the options. */
const outsideOptions = (point: PointDefinition, answer: unknown): Found => {
  if (point.oneOf) {
    const fits = point.oneOf.filter((option) =>
      "const" in option ? option.const === answer : isAbsence(answer),
    );
    if (fits.length !== 1) {
      return notAnOption(point.oneOf.map((option) => ("const" in option ? option.const : null)));
    }
  }
  if (point.items && Array.isArray(answer)) {
    const options = point.items.oneOf?.map((option) => option.const) ?? [];
    const fits = (chosen: unknown) => options.filter((option) => option === chosen).length === 1;
    if (!answer.every(fits)) return notAnOption(options);
  }
  return null;
};

const outsideRange = ({ minimum, maximum }: PointDefinition, answer: number): Found => {
  if (minimum !== undefined && answer < minimum) {
    return found("answer-too-small", { limit: minimum });
  }
  if (maximum !== undefined && answer > maximum) {
    return found("answer-too-large", { limit: maximum });
  }
  return null;
};

const outsideText = (
  point: PointDefinition,
  answer: string,
  patterns: PatternEngine | undefined,
): Found => {
  if (point.maxLength !== undefined && lengthOf(answer) > point.maxLength) {
    return found("answer-too-long", { limit: point.maxLength });
  }
  if (pointKind(point) === "date" && parseCivilDate(answer) === undefined) {
    return found("answer-no-such-day", { answer });
  }
  if (point.pattern === undefined || !patterns) return null;
  // A pattern that the engine refuses is never issued.
  const pattern = patterns.compile(point.pattern);
  return pattern.ok && !pattern.value.test(answer)
    ? found("answer-pattern", { pattern: point.pattern })
    : null;
};

/** Whether one answer is well-formed for its point; null when it is. */
const answerProblem = (
  point: PointDefinition,
  answer: unknown,
  patterns: PatternEngine | undefined,
): Found => {
  const kind = pointKind(point);
  if (kind === "calculated") return found("never-answered", { kind });
  if (!hasShape(kind, answer)) return found("answer-shape", { kind });
  // Each keyword binds the JSON type it is about, as JSON Schema has it.
  const outside = outsideOptions(point, answer);
  if (outside) return outside;
  if (typeof answer === "number") return outsideRange(point, answer);
  return typeof answer === "string" ? outsideText(point, answer, patterns) : null;
};

/**
 * Whether answers are well-formed: validity only, not verdict or completeness. Interprets the
 * document, so it runs under a strict content security policy. Pointers lead into the answers.
 * Without a pattern engine, patterns go unchecked.
 */
export const validateAnswers = (
  doc: Checklist,
  answers: unknown,
  patterns?: PatternEngine,
): readonly Problem[] => {
  if (!isFields(answers)) return [problem("", "wrong-type", { expected: ["object"] })];
  const repeats = repeatsByPoint(doc);
  const known = Object.keys(doc.properties);
  const budget = wordBudget();

  const nameProblem = (name: string): Found => {
    const { point, member } = splitAnswerName(name);
    if (!Object.hasOwn(doc.properties, point)) {
      return found("unknown-point", {
        point: name,
        nearest: nearest(name, known, budget),
      });
    }
    const repeat = repeats.get(point)?.repeat;
    const fits = repeat ? member !== null && allowsMember(repeat, member) : member === null;
    const members = repeat ? membersSaid(repeat) : [];
    return fits ? null : found("unknown-member", { point, member, members });
  };

  return Object.entries(answers).flatMap(([name, answer]) => {
    const definition = doc.properties[splitAnswerName(name).point];
    const wrong =
      nameProblem(name) ?? (definition ? answerProblem(definition, answer, patterns) : null);
    return wrong ? [problem(at("", name), wrong.code, wrong.params)] : [];
  });
};
