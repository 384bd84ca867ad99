import { ADD_PERSON_SCHEMA } from "@roundbook/schemas";
import { describe, expect, it } from "vitest";
import { describeApi, openapiPath } from "./openapi.ts";
import { ROUTE_KEYS, ROUTES, type RouteRule, splitKey } from "./route-table.ts";

interface Operation {
  readonly operationId: string;
  readonly parameters: readonly { name: string; in: string }[];
  readonly requestBody?: { content: Record<string, { schema: object }> };
  readonly responses: Record<string, object>;
}
const api = describeApi() as {
  openapi: string;
  paths: Record<string, Record<string, Operation>>;
};
const operationOf = (key: (typeof ROUTE_KEYS)[number]) => {
  const { method, path } = splitKey(key);
  return api.paths[openapiPath(path)]?.[method.toLowerCase()];
};

describe("the OpenAPI 3.1 document", () => {
  it("names every route once, with its body, its parameters and its success", () => {
    expect(api.openapi).toMatch(/^3\.1\./);
    for (const key of ROUTE_KEYS) {
      const rule: RouteRule = ROUTES[key];
      const operation = operationOf(key);
      expect(operation, key).toBeDefined();
      expect(operation?.requestBody !== undefined, key).toBe(Boolean(rule.body ?? rule.raw));
      expect(Object.keys(operation?.responses ?? {}), key).toContain(String(rule.reply ?? 200));
      const inPath = operation?.parameters.filter((one) => one.in === "path").length;
      expect(inPath, key).toBe(splitKey(key).path.split(":").length - 1);
    }
    const ids = ROUTE_KEYS.map((key) => operationOf(key)?.operationId);
    expect(new Set(ids).size).toBe(ROUTE_KEYS.length);
  });

  it("describes bodies by the very schemas that check them", () => {
    const body = operationOf("POST /api/people")?.requestBody;
    expect(body?.content["application/json"]?.schema).toBe(ADD_PERSON_SCHEMA);
    const parameters = operationOf("GET /api/due")?.parameters.map(({ name }) => name);
    expect(parameters).toEqual([
      "site",
      "place",
      "keeper",
      "assetType",
      "on",
      "status",
      "q",
      "cursor",
      "limit",
    ]);
  });
});
