import { ROUTE_KEYS, ROUTES, type RouteKey, type RouteRule, splitKey } from "./route-table.ts";

const PROBLEM = {
  description: "What went wrong, as RFC 9457 problem details",
  content: {
    "application/problem+json": {
      schema: {
        type: "object",
        properties: {
          type: { type: "string" },
          title: { type: "string" },
          status: { type: "integer" },
          code: { type: "string" },
          problems: {
            type: "array",
            items: {
              type: "object",
              properties: {
                pointer: { type: "string", description: "RFC 6901 pointer into what was sent" },
                code: { type: "string" },
                params: { type: "object" },
              },
              required: ["pointer", "code", "params"],
            },
          },
        },
        required: ["type", "title", "status", "code"],
      },
    },
  },
} as const;

const PARAMETER = /:([a-z0-9]+)/g;

/** OpenAPI writes path parameters in braces. */
export const openapiPath = (path: string): string => path.replaceAll(PARAMETER, "{$1}");

function parametersOf(path: string, query: object | undefined): object[] {
  const inPath = [...path.matchAll(PARAMETER)].map(([, name]) => ({
    name,
    in: "path",
    required: true,
    schema: { type: "string" },
  }));
  const { properties = {} } = (query ?? {}) as { properties?: Readonly<Record<string, object>> };
  const inQuery = Object.entries(properties).map(([name, schema]) => ({
    name,
    in: "query",
    required: false,
    schema,
  }));
  return [...inPath, ...inQuery];
}

function bodyOf({ body, raw }: RouteRule): object | undefined {
  if (body) return { required: true, content: { "application/json": { schema: body } } };
  if (!raw) return undefined;
  const content = raw.map((type) => [type, { schema: { type: "string", format: "binary" } }]);
  return { required: true, content: Object.fromEntries(content) };
}

function operation(key: RouteKey, path: string): object {
  const rule: RouteRule = ROUTES[key];
  const requestBody = bodyOf(rule);
  return {
    operationId: key.replace(/\W+/g, "_").toLowerCase(),
    summary: rule.says,
    ...(rule.who === "anyone"
      ? { security: [] }
      : { security: [{ session: [] }], "x-roles": rule.who }),
    parameters: parametersOf(path, rule.query),
    ...(requestBody ? { requestBody } : {}),
    responses: { [String(rule.reply ?? 200)]: { description: "Done" }, default: PROBLEM },
  };
}

/** The API as OpenAPI 3.1, from the very table that binds and guards the routes. */
export function describeApi(): object {
  const paths: Record<string, Record<string, object>> = {};
  for (const key of ROUTE_KEYS) {
    const { method, path } = splitKey(key);
    const operations = paths[openapiPath(path)] ?? {};
    operations[method.toLowerCase()] = operation(key, path);
    paths[openapiPath(path)] = operations;
  }
  return {
    openapi: "3.1.0",
    info: { title: "Roundbook", version: "1" },
    paths,
    components: {
      securitySchemes: { session: { type: "apiKey", in: "cookie", name: "rb_session" } },
    },
  };
}
