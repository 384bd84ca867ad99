import type { Problem } from "@roundbook/schemas";

/** The keywords of the dialect's schema that say what kind of value stands where. */
interface Shape {
  readonly type?: string | readonly string[];
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly required?: readonly string[];
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly additionalProperties?: boolean | Shape;
  readonly items?: Shape;
  readonly oneOf?: readonly Shape[];
}

const typeOf = (value: unknown): string => {
  if (value === null) return "null";
  if (Array.isArray(value)) return "array";
  return Number.isInteger(value) ? "integer" : typeof value;
};

const fits = (value: unknown, type: string): boolean =>
  typeOf(value) === type || (type === "number" && typeof value === "number");

const escaped = (name: string): string => name.replaceAll("~", "~0").replaceAll("/", "~1");

const ofObject = (shape: Shape, value: object, pointer: string): Problem[] => {
  const missing = (shape.required ?? [])
    .filter((keyword) => !Object.hasOwn(value, keyword))
    .map((keyword) => ({ pointer, code: "missing-keyword", params: { keyword } }));
  const within = Object.entries(value).flatMap(([name, one]) => {
    const known = Object.hasOwn(shape.properties ?? {}, name) ? shape.properties?.[name] : null;
    const rule = known ?? shape.additionalProperties;
    return typeof rule === "object" ? shapeProblems(rule, one, `${pointer}/${escaped(name)}`) : [];
  });
  return [...missing, ...within];
};

/**
 * Where a value is of another kind than a schema says: types, fixed words, members that must be
 * there. Lengths, patterns and keywords nobody knows do no harm to a page that shows the value.
 * Read by hand, as browsers under this page's policy compile nothing.
 */
export const shapeProblems = (shape: Shape, value: unknown, pointer = ""): Problem[] => {
  const { type, properties, oneOf, items } = shape;
  if (oneOf && !properties) {
    const found = oneOf.map((one) => shapeProblems(one, value, pointer));
    return found.some((problems) => problems.length === 0) ? [] : (found[0] ?? []);
  }
  const types = typeof type === "string" ? [type] : type;
  if (types && !types.some((one) => fits(value, one)))
    return [{ pointer, code: "wrong-type", params: { expected: [...types] } }];
  const allowed = Object.hasOwn(shape, "const") ? [shape.const] : shape.enum;
  if (allowed && !allowed.includes(value))
    return [{ pointer, code: "not-allowed", params: { allowed: allowed.map(String) } }];
  if (Array.isArray(value))
    return items ? value.flatMap((one, at) => shapeProblems(items, one, `${pointer}/${at}`)) : [];
  return typeof value === "object" && value !== null ? ofObject(shape, value, pointer) : [];
};
