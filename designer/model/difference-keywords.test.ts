import { CHECKLIST_SCHEMA, canonicalize, issueDocument } from "@roundbook/schemas";
import fc from "fast-check";
import { expect, test } from "vitest";
import { COMMANDS, drawing, numbered, wholeList } from "../testing/edits.ts";
import { EVERY_KEYWORD } from "../testing/every-keyword.ts";
import { type Change, type ChangeKind, differences } from "./difference.ts";
import type { DraftDocument } from "./draft-document.ts";
import { asDraft } from "./read-document.ts";

interface Schema {
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly type?: string | readonly string[];
  readonly pattern?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: Schema | boolean | { const: false };
  readonly items?: Schema;
  readonly oneOf?: readonly Schema[];
}
type Path = readonly string[];
type Part = Readonly<Record<string, unknown>>;

/** Written by the program itself when a checklist is issued, or the same in every document. */
const NOT_TYPED = new Set([
  "$schema",
  "dialect",
  "type",
  "additionalProperties",
  "patternProperties",
  "propertyNames",
  "$defs",
]);

const ofMap = ({ additionalProperties: of }: Schema): Schema | undefined =>
  typeof of === "object" && !("const" in of && of.const === false) ? (of as Schema) : undefined;

/** The one value it can have. */
const always = ({ required, properties }: Schema, name: string): boolean =>
  (required ?? []).includes(name) && "const" in (properties?.[name] ?? {});

/** Every keyword there is, by its path: `*` for any name, `[]` for any member of a list. */
const keywords = (schema: Schema, path: Path = []): string[] => [
  ...(schema.oneOf ?? []).flatMap((branch) => keywords(branch, path)),
  ...Object.entries(schema.properties ?? {}).flatMap(([name, one]) =>
    (path.length === 0 && NOT_TYPED.has(name)) || always(schema, name)
      ? []
      : [[...path, name].join("/"), ...keywords(one, [...path, name])],
  ),
  ...(schema.items ? keywords(schema.items, [...path, "[]"]) : []),
  ...(ofMap(schema) ? keywords(ofMap(schema) as Schema, [...path, "*"]) : []),
];

const kindOf = (value: unknown): string => (Array.isArray(value) ? "array" : typeof value);
const fits = (schema: Schema, value: unknown): boolean => {
  if ("const" in schema) return schema.const === value;
  if (schema.enum) return schema.enum.includes(value);
  const kinds = [schema.type ?? "object"].flat().map((one) => (one === "integer" ? "number" : one));
  if (!kinds.includes(kindOf(value))) return false;
  if (typeof value === "string") return !schema.pattern || new RegExp(schema.pattern).test(value);
  if (kindOf(value) !== "object") return true;
  return Object.keys(value as Part).every((name) => Object.hasOwn(schema.properties ?? {}, name));
};

const OTHER_WORDS = ["P9D", "2031-05-06", "de", "kg", "other_name", "asset.length"];
const otherText = (path: Path, schema: Schema, value: string): unknown[] => {
  if (path.at(-1) === "unit" || path.at(-2) === "alsoIn") return ["kg"];
  const fresh = [`${value} + 1`, `${value}_x`, ...OTHER_WORDS];
  return fresh.filter((one) => one !== value && fits(schema, one)).slice(0, 1);
};

/** A value with one thing in it changed, and the path of that keyword. */
interface Mutant {
  readonly path: Path;
  readonly value: unknown;
}

const mutants = (schema: Schema, value: unknown, path: Path = []): Mutant[] => {
  const here = (values: readonly unknown[]) => values.map((one) => ({ path, value: one }));
  if (schema.oneOf && !schema.properties)
    return schema.oneOf
      .filter((branch) => fits(branch, value))
      .slice(0, 1)
      .flatMap((branch) => mutants(branch, value, path));
  if ("const" in schema) return [];
  if (schema.enum) return here(schema.enum.filter((one) => one !== value));
  if (typeof value === "number") return here([value + (path.at(-1) === "order" ? 5 : 1)]);
  if (typeof value === "boolean") return here([!value]);
  if (typeof value === "string") return here(otherText(path, schema, value));
  if (Array.isArray(value))
    return [
      ...here(value.length > 1 ? [value.toReversed(), value.slice(0, -1)] : []),
      ...value.flatMap((one, at) =>
        mutants(schema.items as Schema, one, [...path, "[]"]).map((mutant) => ({
          path: mutant.path,
          value: value.with(at, mutant.value),
        })),
      ),
    ];
  const map = ofMap(schema);
  return Object.entries(value as Part).flatMap(([name, one]) => {
    const step = [...path, map ? "*" : name];
    const { [name]: _, ...rest } = value as Part;
    const needed = (schema.required ?? []).includes(name);
    if (path.length === 0 && NOT_TYPED.has(name)) return [];
    return [
      ...(needed ? [] : [{ path: step, value: rest }]),
      ...mutants(map ?? (schema.properties?.[name] as Schema), one, step).map((mutant) => ({
        path: mutant.path,
        value: { ...(value as Part), [name]: mutant.value },
      })),
    ];
  });
};

/** Names for the program, and a type that says no more than the words: the document is quoted. */
const mayBeQuoted = (path: Path): boolean => ["id", "const", "type"].includes(path.at(-1) ?? "");

const MEMBER_KINDS: Readonly<Record<string, readonly ChangeKind[]>> = {
  title: ["title"],
  description: ["description"],
  language: ["language"],
  minutes: ["minutes"],
  cautions: ["cautions"],
  particulars: ["particular"],
  values: ["value"],
  scores: ["score"],
  stops: ["stops"],
  wording: ["languages"],
  include: ["include"],
};
const GROUP_KINDS: Readonly<Record<string, readonly ChangeKind[]>> = {
  id: ["group-added"],
  title: ["group"],
  points: ["order", "gone"],
  groupAnswer: ["group-answer"],
  repeat: ["repeat"],
};
const POINT_MEMBERS: Readonly<Record<string, ChangeKind>> = {
  $ref: "kind",
  title: "wording",
  description: "wording",
  oneOf: "options",
  items: "options",
  minimum: "range",
  maximum: "range",
  maxLength: "length",
};

/** The kinds of change that name a keyword: one of them is told. */
const kindsFor = ([member = "", ...rest]: Path): readonly ChangeKind[] => {
  if (member === "particulars" && rest[1] === "order") return ["particular-order"];
  if (member === "groups")
    return rest.length > 1
      ? (GROUP_KINDS[rest[1] ?? ""] ?? [])
      : ["group-order", "group-gone", "order"];
  if (member === "properties") {
    const part = rest[1];
    return part === undefined ? ["gone"] : [POINT_MEMBERS[part] ?? (part as ChangeKind)];
  }
  return MEMBER_KINDS[member] ?? [];
};

const SCHEMA = CHECKLIST_SCHEMA as unknown as Schema;
const EVERY = mutants(SCHEMA, EVERY_KEYWORD)
  .filter(({ value }) => asDraft(value as DraftDocument).ok)
  .map(({ path, value }) => ({ path, keyword: path.join("/"), document: value as DraftDocument }));

const hashed = ({ include: _, ...document }: DraftDocument): string =>
  canonicalize(issueDocument(document));
const told = ({ was, is }: Change): boolean => (was ?? "") !== (is ?? "");
const quoted = ({ was, is }: Change): boolean =>
  [was, is].some((words) => words?.startsWith("written "));

test("every keyword of the dialect is changed once at least", () => {
  const changed = new Set(EVERY.map(({ keyword }) => keyword));
  const within = (keyword: string) => [...changed].some((one) => one.startsWith(`${keyword}/`));
  const untried = keywords(SCHEMA).filter((one) => !changed.has(one) && !within(one));
  expect([...new Set(untried)]).toEqual([]);
});

test.each([...new Set(EVERY.map(({ keyword }) => keyword))])(
  "a change of %s is told in words as a change of that",
  (keyword) => {
    for (const { path, document } of EVERY.filter((one) => one.keyword === keyword)) {
      const changes = differences(EVERY_KEYWORD, document);
      const isTold = hashed(document) !== hashed(EVERY_KEYWORD) || path[0] === "include";
      if (!isTold) {
        expect(changes).toEqual([]);
        continue;
      }
      const naming = changes.filter(({ kind }) => kindsFor(path).includes(kind));
      expect({ keyword, changes, naming: naming.length > 0 }).toMatchObject({ naming: true });
      for (const change of naming) {
        const silent = ["gone", "group-gone", "group-added"].includes(change.kind);
        expect({ change, told: silent || told(change) }).toMatchObject({ told: true });
        expect({ change, quoted: quoted(change) && !mayBeQuoted(path) }).toMatchObject({
          quoted: false,
        });
      }
    }
  },
);

test("something is told exactly when the canonical form differs", () => {
  const { include: _, ...first } = EVERY_KEYWORD;
  const one = fc.constantFrom(
    first,
    ...EVERY.map(({ document: { include: __, ...rest } }) => rest),
  );
  fc.assert(
    fc.property(one, one, (before, after) => {
      const differs = hashed(before) !== hashed(after);
      expect(differences(issueDocument(before), after).length > 0).toBe(differs);
      expect(differences(before, after).length > 0).toBe(differs);
    }),
    { seed: 20261201, numRuns: 500 },
  );
});

test("whatever is edited, something is told exactly when the canonical form differs", () => {
  const step = fc.record({
    command: fc.constantFrom(...Object.keys(COMMANDS)),
    drawn: fc.array(fc.nat(1000), { minLength: 12, maxLength: 12 }),
  });
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 4 }), (steps) => {
      const text = numbered();
      const first = wholeList(text);
      const last = steps.reduce<DraftDocument>((list, { command, drawn }) => {
        const { include: _, ...next } = COMMANDS[command]?.(list, drawing(drawn), text) ?? list;
        return next;
      }, first);
      const differs = hashed(first) !== hashed(last);
      expect(differences(issueDocument(first), last).length > 0).toBe(differs);
    }),
    { seed: 20261201, numRuns: 200 },
  );
});
