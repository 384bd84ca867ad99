import { at, type Problem, type ProblemParam, problem } from "@roundbook/schemas";
import { Ajv2020, type ErrorObject, type ValidateFunction } from "ajv/dist/2020.js";
import { Refusal } from "../usecases/refusal.ts";
import { ROUTE_KEYS, ROUTES, type RouteKey, type RouteRule } from "./route-table.ts";

const MAX_PROBLEMS = 100;

const asParam = (value: unknown): ProblemParam =>
  typeof value === "string" || typeof value === "number" || typeof value === "boolean"
    ? value
    : JSON.stringify(value);

/** Ajv names the keyword that failed; the place is where something is missing, extra or wrong. */
function toProblem({ instancePath, keyword, params }: ErrorObject): Problem {
  if (keyword === "required") {
    const name = String(params["missingProperty"]);
    return problem(at(instancePath, name), "required", { name });
  }
  if (keyword === "additionalProperties") {
    const name = String(params["additionalProperty"]);
    return problem(at(instancePath, name), "unknown-member", { name });
  }
  const plain = Object.entries(params as Record<string, unknown>).map(
    ([name, value]) => [name, Array.isArray(value) ? value.map(String) : asParam(value)] as const,
  );
  return problem(instancePath, keyword, Object.fromEntries(plain));
}

export type Check = (value: unknown) => void;
export interface RouteChecks {
  readonly body: Check;
  readonly query: Check;
}

const NO_QUERY = { type: "object", properties: {}, additionalProperties: false } as const;

function refuser(validate: ValidateFunction, code: string): Check {
  return (value) => {
    if (validate(value)) return;
    const problems = (validate.errors ?? []).slice(0, MAX_PROBLEMS).map(toProblem);
    throw new Refusal("invalid", code, problems);
  };
}

/** Compiles what every route of the table asks of its body and query, once, at the start. */
export function compileRouteChecks(): ReadonlyMap<RouteKey, RouteChecks> {
  const ajv = new Ajv2020({
    allErrors: true,
    strictTypes: false,
    inlineRefs: false,
    ownProperties: true,
  });
  const pass: Check = () => undefined;
  return new Map(
    ROUTE_KEYS.map((key) => {
      const rule: RouteRule = ROUTES[key];
      const body = rule.body ? refuser(ajv.compile(rule.body), "body-not-right") : pass;
      const query = refuser(ajv.compile(rule.query ?? NO_QUERY), "query-not-right");
      return [key, { body, query }] as const;
    }),
  );
}
