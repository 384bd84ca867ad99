import type { ErrorObject } from "ajv/dist/2020.js";
import { nearest } from "../shared/nearest.ts";
import { NAME, NOT_BLANK } from "../shared/patterns.ts";
import { at, type Problem, type ProblemParam, problem } from "../shared/problem.ts";

type Params = Readonly<Record<string, unknown>>;

const word = (params: Params, key: string): string => String(params[key] ?? "");
const limit = (params: Params): { limit: number } => ({ limit: Number(params.limit) });

/** Keywords the schema knows at the place of an error, for "did you mean". */
const knownKeywords = (error: ErrorObject): readonly string[] => {
  const parent: unknown = error.parentSchema?.properties;
  return typeof parent === "object" && parent !== null ? Object.keys(parent) : [];
};

const scalars = (list: unknown): ProblemParam =>
  Array.isArray(list) ? list.map(String).slice(0, 50) : [String(list)];

/** One error of Ajv as a problem of ours. */
const translate = (error: ErrorObject): Problem => {
  const { instancePath: pointer, keyword } = error;
  const params: Params = error.params;
  switch (keyword) {
    case "additionalProperties":
    case "unevaluatedProperties": {
      const unknown = word(params, "additionalProperty");
      const near = nearest(unknown, knownKeywords(error));
      return problem(at(pointer, unknown), "unknown-keyword", { keyword: unknown, nearest: near });
    }
    case "required":
      return problem(pointer, "missing-keyword", { keyword: word(params, "missingProperty") });
    case "type":
      return problem(pointer, "wrong-type", { expected: scalars(params.type) });
    case "enum":
      return problem(pointer, "not-allowed", { allowed: scalars(params.allowedValues) });
    case "const":
      return problem(pointer, "not-allowed", { allowed: scalars(params.allowedValue) });
    case "minimum":
    case "exclusiveMinimum":
      return problem(pointer, "too-small", limit(params));
    case "maximum":
    case "exclusiveMaximum":
      return problem(pointer, "too-large", limit(params));
    case "minLength":
      return problem(pointer, "too-short", limit(params));
    case "maxLength":
      return problem(pointer, "too-long", limit(params));
    case "minItems":
    case "minProperties":
      return problem(pointer, "too-few", limit(params));
    case "maxItems":
    case "maxProperties":
      return problem(pointer, "too-many", limit(params));
    case "uniqueItems":
      return problem(pointer, "duplicate", { first: Number(params.j), second: Number(params.i) });
    case "propertyNames": {
      const name = word(params, "propertyName");
      return problem(at(pointer, name), "bad-name", { name });
    }
    case "pattern": {
      const pattern = word(params, "pattern");
      if (pattern === NOT_BLANK) return problem(pointer, "blank");
      return pattern === NAME
        ? problem(pointer, "bad-name", { name: String(error.data) })
        : problem(pointer, "bad-format", { pattern });
    }
    case "oneOf":
    case "anyOf":
      return problem(pointer, "no-form-fits");
    default:
      return problem(pointer, "invalid", { rule: keyword });
  }
};

/** Errors inside one `oneOf`, by branch. */
const branchesOf = (choice: ErrorObject, errors: readonly ErrorObject[]) => {
  const branches = new Map<string, ErrorObject[]>();
  const prefix = `${choice.schemaPath}/`;
  for (const error of errors) {
    if (
      !error.schemaPath.startsWith(prefix) ||
      !error.instancePath.startsWith(choice.instancePath)
    ) {
      continue;
    }
    const branch = error.schemaPath.slice(prefix.length).split("/")[0] ?? "";
    branches.set(branch, [...(branches.get(branch) ?? []), error]);
  }
  return [...branches.values()];
};

/** Whether an error shows that a form was not meant: by its type, its value, or a member that names it. */
function tellsApart({ keyword, instancePath }: ErrorObject, choice: ErrorObject): boolean {
  if (instancePath === choice.instancePath) return ["type", "const", "enum"].includes(keyword);
  return keyword === "const" && instancePath.lastIndexOf("/") === choice.instancePath.length;
}

/** Of the forms a value may have, the errors of the one it was evidently meant to have. */
const meant = (choice: ErrorObject, errors: readonly ErrorObject[]): readonly Problem[] => {
  const branches = branchesOf(choice, errors);
  if (branches.length > 0 && branches.flat().every((error) => error.keyword === "required")) {
    const keywords = branches.flat().map((error) => word(error.params, "missingProperty"));
    return [problem(choice.instancePath, "exactly-one-of", { keywords })];
  }
  const unlike = branches.map((branch) => branch.find((error) => tellsApart(error, choice)));
  const close = branches.filter((_, index) => unlike[index] === undefined);
  const [first] = unlike;
  // No form is named so: the names that there are say more than "none fits".
  if (
    first?.keyword === "const" &&
    unlike.every((error) => error?.instancePath === first.instancePath)
  ) {
    const allowed = unlike.map((error) => String(error?.params.allowedValue));
    return [problem(first.instancePath, "not-allowed", { allowed: [...new Set(allowed)] })];
  }
  const only = close.length === 1 ? close[0] : undefined;
  return only ? problemsOf(only) : [translate(choice)];
};

/** Errors of Ajv as problems: a choice of forms is told once, an unknown name without its pattern. */
export const problemsOf = (errors: readonly ErrorObject[]): readonly Problem[] => {
  const choices = errors.filter(({ keyword }) => keyword === "oneOf" || keyword === "anyOf");
  const outer = choices.filter(
    (choice) => !choices.some((other) => other !== choice && within(choice, other)),
  );
  const problems = [
    ...errors
      .filter((error) => error.propertyName === undefined && !choices.includes(error))
      .filter((error) => !outer.some((choice) => within(error, choice)))
      .map(translate),
    ...outer.flatMap((choice) =>
      meant(
        choice,
        errors.filter((error) => within(error, choice)),
      ),
    ),
  ];
  const seen = new Set<string>();
  return problems.filter((found) => {
    const key = JSON.stringify(found);
    return !seen.has(key) && seen.add(key);
  });
};

const within = (error: ErrorObject, choice: ErrorObject): boolean =>
  error.schemaPath.startsWith(`${choice.schemaPath}/`) &&
  (error.instancePath === choice.instancePath ||
    error.instancePath.startsWith(`${choice.instancePath}/`));
