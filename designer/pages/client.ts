import type { Problem } from "@roundbook/schemas";

/** The server answered, and said no; `reply` is its problem details. */
export class Refusal extends Error {
  constructor(
    readonly status: number,
    readonly code: string,
    readonly problems: readonly Problem[],
    readonly reply: Readonly<Record<string, unknown>>,
  ) {
    super(code);
  }
}

/** The server could not be reached. */
export class Unreachable extends Error {}

/** Throws `Unreachable` without an answer and `Refusal` with one outside 2xx. */
export const send = async (path: string, init: RequestInit = {}): Promise<Response> => {
  let response: Response;
  try {
    response = await fetch(path, { ...init, credentials: "same-origin" });
  } catch (error) {
    throw new Unreachable(String(error));
  }
  if (response.ok) return response;
  const reply = await response.json().catch(() => ({}));
  throw new Refusal(
    response.status,
    reply.code ?? `http-${response.status}`,
    reply.problems ?? [],
    reply,
  );
};

export const getJson = async <T>(path: string): Promise<T> => (await send(path)).json();

export const sendJson = async <T>(method: string, path: string, body?: unknown): Promise<T> => {
  const text = body === undefined ? undefined : JSON.stringify(body);
  const response = await send(path, {
    method,
    headers: { "content-type": "application/json" },
    body: text,
    // What is sent while the page is left still arrives; browsers allow 64 KiB for it.
    keepalive: (text?.length ?? 0) < 30_000,
  });
  return response.status === 204 ? (undefined as T) : response.json();
};
