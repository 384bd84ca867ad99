import { answerName } from "../checklist/answer-name.ts";
import type { Answers, Particulars } from "../checklist/answer-types.ts";
import { pointKind } from "../checklist/guards.ts";
import type { Checklist, PointDefinition } from "../checklist/meta-schema.ts";
import { repeatsByPoint } from "../checklist/repeats.ts";
import { NOT_JSON, ODD_NAMES, ODD_VALUES } from "./nasty.ts";
import type { Random } from "./random.ts";

const HASH = "a".repeat(64);

/** An answer as a person gives it, within the limits or not. */
const given = (random: Random, point: PointDefinition): unknown => {
  const reading = () => ({
    value: random.pick([0, 1, 2.5, 20, 55, -3, 1e6]),
    unit: random.pick([point.quantity?.unit ?? "1", ...(point.quantity?.alsoIn ?? []), "mm"]),
    ...(random.below(4) === 0 ? { comparator: random.pick(["<", ">"]) } : {}),
    ...(random.below(3) === 0 ? { elapsed: 60 } : {}),
  });
  const options = (point.oneOf ?? []).flatMap((one) => ("const" in one ? [one.const] : []));
  switch (pointKind(point)) {
    case "check":
      return random.pick(["ok", "not-ok"]);
    case "choice":
      return random.pick([...options, "other"]);
    case "choices":
      return (point.items?.oneOf ?? []).map((one) => one.const).filter(() => random.below(2) === 0);
    case "graded":
    case "count":
      return random.below(7);
    case "reading":
      return reading();
    case "readings":
      return [...Array(random.below(5)).keys()].map(reading);
    case "date":
      return random.pick(["2026-03-01", "2019-02-29", "0000-01-01"]);
    case "text":
      return "words";
    case "photo":
      return [HASH];
    case "signature":
      return { signedBy: "M. Tolvane" };
    case "sample":
      return random.below(2) === 0 ? { sample: "A 1" } : { sample: "A 1", result: reading() };
    case "calculated":
      return 1;
  }
};

const odd = (random: Random): unknown => random.pick([...ODD_VALUES, ...NOT_JSON]);
const ABSENT = { absent: { reason: "not-applicable" } };

/** Answers to most points; `malformed` makes every other one something that is no answer. */
export const randomAnswers = (random: Random, doc: Checklist, malformed: boolean): Answers => {
  const repeats = repeatsByPoint(doc);
  const entries = Object.entries(doc.properties).flatMap(([name, point]) => {
    const repeat = repeats.get(name)?.repeat;
    const members = repeat ? (repeat.members?.map(({ id }) => id) ?? ["1", "2", "3"]) : [null];
    return members.flatMap((member): [string, unknown][] => {
      if (random.below(8) === 0) return [];
      const answer = random.below(8) === 0 ? ABSENT : given(random, point);
      return [
        [answerName(name, member), malformed && random.below(2) === 0 ? odd(random) : answer],
      ];
    });
  });
  const strange = malformed ? [[random.pick(ODD_NAMES), odd(random)]] : [];
  return Object.fromEntries([...entries, ...strange]) as Answers;
};

/** Particulars as defined, some of them left out, some of another type. */
export const randomParticulars = (random: Random, doc: Checklist): Particulars => {
  const entries = Object.entries(doc.particulars ?? {}).flatMap(([name, definition]) => {
    if (random.below(8) === 0) return [];
    if (random.below(10) === 0) return [[name, odd(random)]];
    if (definition.enum) return [[name, random.pick(definition.enum)]];
    if (definition.format === "date") return [[name, "2024-05-06"]];
    const { minimum = 1, maximum = minimum + 3 } = definition;
    if (definition.type === "boolean") return [[name, random.below(2) === 0]];
    const isNumber = definition.type === "number" || definition.type === "integer";
    return [[name, isNumber ? Math.floor((minimum + maximum) / 2) : "A"]];
  });
  return Object.fromEntries(entries) as Particulars;
};
