import { problem } from "@roundbook/schemas";
import type { Context } from "hono";
import { jsonFault } from "../usecases/json-fault.ts";
import { Refusal } from "../usecases/refusal.ts";

/**
 * The bytes of a body, refused as soon as they pass `limit`: a length that was announced is
 * believed only when it is too large already.
 */
export async function readBytes(c: Context, limit: number): Promise<Uint8Array> {
  const tooLarge = () =>
    new Refusal("too-large", "too-large", [problem("", "document-too-big", { limit })]);
  if (Number(c.req.header("content-length") ?? 0) > limit) throw tooLarge();
  const body = c.req.raw.body;
  if (!body) return new Uint8Array(0);
  const parts: Uint8Array[] = [];
  let size = 0;
  for await (const part of body as unknown as AsyncIterable<Uint8Array>) {
    size += part.byteLength;
    if (size > limit) throw tooLarge();
    parts.push(part);
  }
  return Buffer.concat(parts, size);
}

const UTF8 = new TextDecoder("utf-8", { fatal: true, ignoreBOM: false });

/** A JSON body within `limit` bytes; its depth and form are checked by the route's schema. */
export async function readJson(c: Context, limit: number): Promise<unknown> {
  const type = c.req.header("content-type") ?? "";
  if (!/^application\/json\s*(;|$)/i.test(type))
    throw new Refusal("wrong-type", "not-json", [
      problem("", "wrong-content-type", { expected: "application/json", found: type }),
    ]);
  const bytes = await readBytes(c, limit);
  let text: string;
  try {
    text = UTF8.decode(bytes);
  } catch {
    throw new Refusal("malformed", "not-utf8", [problem("", "not-utf8")]);
  }
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new Refusal("malformed", "not-json", [jsonFault(text, error)]);
  }
}
