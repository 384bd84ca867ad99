import fc from "fast-check";
import { answerName } from "../checklist/answer-name.ts";
import { ABSENCE_REASONS } from "../checklist/answer-types.ts";
import type { Checklist, PointDefinition } from "../checklist/meta-schema.ts";
import { repeatsByPoint } from "../checklist/repeats.ts";

const HASH = "0".repeat(64);
const reading = fc.record(
  {
    value: fc.oneof(fc.integer({ min: -5, max: 60 }), fc.constant(1.5)),
    unit: fc.constantFrom("mm", "Ohm", "s", "furlong", ""),
    comparator: fc.constantFrom("<", ">", "="),
    elapsed: fc.integer({ min: -1, max: 90 }),
    note: fc.constant("x"),
  },
  { requiredKeys: ["value", "unit"] },
);
const absent = fc.record(
  {
    absent: fc.record(
      {
        reason: fc.constantFrom(...ABSENCE_REASONS, "lazy"),
        note: fc.constantFrom("", "why", { commit: HASH }),
      },
      { requiredKeys: ["reason"] },
    ),
    ok: fc.constant(true),
  },
  { requiredKeys: ["absent"] },
);

/** Near-misses and hits of every kind, whichever point they are given for. */
const anAnswer = fc.oneof(
  fc.constantFrom<unknown>("ok", "not-ok", "", "2026-02-28", "2026-13-01", "whole", null, true, {}),
  fc.integer({ min: -2, max: 8 }),
  absent,
  reading,
  fc.array(reading, { maxLength: 4 }),
  fc.array(fc.constantFrom("whole", "marked", HASH, "elsewhere"), { maxLength: 3 }),
  fc.record({
    signedBy: fc.constantFrom("M. Tolvane", { commit: HASH }),
    drawing: fc.constant(HASH),
  }),
  fc.record({ sample: fc.constantFrom("A 1", ""), result: reading }, { requiredKeys: ["sample"] }),
  fc.jsonValue({ maxDepth: 2 }),
);

const optionsOf = (point: PointDefinition): readonly string[] => [
  ...(point.oneOf ?? []).flatMap((one) => ("const" in one ? [one.const] : [])),
  ...(point.items?.oneOf ?? []).map((one) => one.const),
];

/** Names that answers may have or are mistaken for: with a member, without one, of other members. */
const namesNear = (doc: Checklist): readonly string[] => {
  const repeats = repeatsByPoint(doc);
  return Object.keys(doc.properties).flatMap((point) => {
    const members = repeats.get(point)?.repeat.members?.map(({ id }) => id) ?? [];
    return [null, "1", "12", "13", "left", ...members].map((member) => answerName(point, member));
  });
};

/** Sets of answers for a checklist, sound and unsound ones, well named and misnamed. */
export const anyAnswers = (doc: Checklist): fc.Arbitrary<Record<string, unknown>> => {
  const options = Object.values(doc.properties).flatMap(optionsOf);
  const chosen = fc.constantFrom<unknown>("ok", ...options, ...options.map((option) => [option]));
  const name = fc.oneof(
    { weight: 9, arbitrary: fc.constantFrom(...namesNear(doc)) },
    {
      weight: 1,
      arbitrary: fc.constantFrom("__proto__", "toString", "left", "gap_top@left@right"),
    },
  );
  return fc
    .array(fc.tuple(name, fc.oneof(anAnswer, chosen)), { maxLength: 3 })
    .map((entries) => Object.fromEntries(entries));
};
