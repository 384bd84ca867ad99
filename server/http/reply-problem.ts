import type { RefusalCode } from "@roundbook/schemas";
import type { Context } from "hono";
import { Refusal, type RefusalKind } from "../usecases/refusal.ts";

type ErrorStatus = 400 | 401 | 403 | 404 | 409 | 413 | 415 | 422 | 429 | 500;

const STATUS: Record<RefusalKind, ErrorStatus> = {
  malformed: 400,
  "signed-out": 401,
  forbidden: 403,
  "not-found": 404,
  conflict: 409,
  "too-large": 413,
  "wrong-type": 415,
  invalid: 422,
  "too-many": 429,
};

const TITLE: Record<ErrorStatus, string> = {
  400: "The request could not be read",
  401: "Sign in first",
  403: "Your role does not allow this",
  404: "There is nothing here by that name",
  409: "This does not fit what is already there",
  413: "This is too large",
  415: "This kind of content is not accepted here",
  422: "Something in it is not right",
  429: "Too many requests: wait a little",
  500: "The server met an error of its own",
};

const send = (status: ErrorStatus, code: RefusalCode, more: Readonly<Record<string, unknown>>) =>
  new Response(
    JSON.stringify({
      type: `urn:roundbook:problem:${code}`,
      title: TITLE[status],
      status,
      code,
      ...more,
    }),
    {
      status,
      headers: { "content-type": "application/problem+json", "cache-control": "no-store" },
    },
  );

/** Told of errors of our own. */
export type Report = (error: unknown, during: string) => void;

/**
 * The one place where errors become RFC 9457 problem details. What is not a refusal is our own
 * fault: its details go to the log, never to the asker.
 */
export function replyProblem(error: unknown, c: Context, report: Report): Response {
  if (error instanceof Refusal) {
    const { kind, code, problems, extra } = error;
    const reply = send(STATUS[kind], code, {
      ...extra,
      ...(problems.length > 0 ? { problems } : {}),
    });
    if (typeof extra.retryAfter === "number")
      reply.headers.set("retry-after", String(extra.retryAfter));
    return reply;
  }
  report(error, `${c.req.method} ${c.req.path}`);
  return send(500, "internal", {});
}
