import type { Context } from "hono";
import type { FromSchema, JSONSchema } from "json-schema-to-ts";
import type { Session } from "../usecases/context.ts";
import type { AppContext } from "./app-context.ts";
import type { ROUTES, RouteKey } from "./route-table.ts";

type Rule<K extends RouteKey> = (typeof ROUTES)[K];
type Shape<S> = S extends JSONSchema ? FromSchema<S> : never;
type BodyOf<K extends RouteKey> = Rule<K> extends { readonly body: infer S } ? Shape<S> : undefined;
type QueryOf<K extends RouteKey> =
  Rule<K> extends { readonly query: infer S } ? Shape<S> : Record<never, never>;

/** A request after everything its rule in the route table asks has been checked. */
export interface Call<K extends RouteKey> {
  readonly c: Context;
  readonly ctx: AppContext;
  readonly session: Rule<K>["who"] extends "anyone" ? Session | null : Session;
  /** The cookie's value, for those who end a session. */
  readonly token: string;
  readonly body: BodyOf<K>;
  readonly query: QueryOf<K>;
  /** A parameter of the path. */
  readonly param: (name: string) => string;
}

/** What is returned becomes the JSON reply; nothing returned is 204; a `Response` goes as it is. */
// biome-ignore lint/suspicious/noConfusingVoidType: a handler that only acts returns nothing
export type Reply = object | Response | void;
export type Handler<K extends RouteKey> = (call: Call<K>) => Reply | Promise<Reply>;
export type Handlers<K extends RouteKey> = { readonly [Key in K]: Handler<Key> };
