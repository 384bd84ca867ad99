import type { Problem } from "@roundbook/schemas";

/** The server answered, and said no. */
export class Refusal extends Error {
  constructor(
    readonly status: number,
    readonly code: string,
    readonly problems: readonly Problem[],
  ) {
    super(code);
  }
}

/** The server could not be reached, or did not answer in time. */
export class Unreachable extends Error {}

const PATIENCE_MS = 20_000;

interface ProblemDetails {
  readonly code?: string;
  readonly problems?: readonly Problem[];
}

/**
 * Every request of the app passes here. Throws `Unreachable` without an answer and `Refusal` with
 * one outside 2xx (304 is returned).
 */
export const send = async (path: string, init: RequestInit = {}): Promise<Response> => {
  let response: Response;
  try {
    response = await fetch(path, {
      ...init,
      credentials: "same-origin",
      signal: init.signal ?? AbortSignal.timeout(PATIENCE_MS),
    });
  } catch (error) {
    throw new Unreachable(String(error));
  }
  if (response.ok || response.status === 304) return response;
  // A proxy on the way answers for a server that is away: no verdict of ours.
  if (response.status >= 502 && response.status <= 504) throw new Unreachable(`${response.status}`);
  const details: ProblemDetails = await response.json().catch(() => ({}));
  throw new Refusal(
    response.status,
    details.code ?? `http-${response.status}`,
    details.problems ?? [],
  );
};

export const getJson = async <T>(path: string): Promise<T> => (await send(path)).json();

export const sendJson = async <T>(method: string, path: string, body: unknown): Promise<T> => {
  const response = await send(path, {
    method,
    headers: { "content-type": "application/json" },
    body: JSON.stringify(body),
  });
  return response.status === 204 ? (undefined as T) : response.json();
};
