import type { RefusalCode, Result } from "@roundbook/schemas";
import { compileSchema } from "@roundbook/schemas/validate";
import { Refusal } from "../usecases/refusal.ts";
import { DEFAULT_LIMIT, ROUTE_KEYS, ROUTES, type RouteKey, type RouteRule } from "./route-table.ts";

/** A checklist may be 32 levels deep and comes wrapped in a body. */
const DEPTH = 34;

export type Check = (value: unknown) => void;
export interface RouteChecks {
  readonly body: Check;
  readonly query: Check;
}

const NO_QUERY = { type: "object", properties: {}, additionalProperties: false } as const;

function refuser(check: (value: unknown) => Result<unknown>, code: RefusalCode): Check {
  return (value) => {
    const result = check(value);
    if (!result.ok) throw new Refusal("invalid", code, result.problems);
  };
}

/** What every route of the table asks of its body and query. */
export function compileRouteChecks(): ReadonlyMap<RouteKey, RouteChecks> {
  return new Map(
    ROUTE_KEYS.map((key) => {
      const { body, envelope, query, limit }: RouteRule = ROUTES[key];
      const form = envelope ?? body ?? {};
      const limits = { bytes: limit ?? DEFAULT_LIMIT, depth: DEPTH };
      return [
        key,
        {
          body: body ? refuser(compileSchema(form, limits), "body-not-right") : () => undefined,
          query: refuser(compileSchema(query ?? NO_QUERY), "query-not-right"),
        },
      ] as const;
    }),
  );
}
