import { readFile } from "node:fs/promises";
import { problem } from "@roundbook/schemas";
import { compileSchema } from "@roundbook/schemas/validate";
import { jsonFault } from "../usecases/json-fault.ts";
import { Refusal } from "../usecases/refusal.ts";

const UTF8 = new TextDecoder("utf-8", { fatal: true });

/** A JSON file. @throws Refusal when it holds none. */
export async function readJson(path: string): Promise<unknown> {
  const bytes = await readFile(path);
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

/** A reader of JSON files that fit a schema; the type is the one `FromSchema` gives for it. */
export function jsonReader<T>(schema: object): (path: string) => Promise<T> {
  const check = compileSchema<T>(schema);
  return async (path) => {
    const value = check(await readJson(path));
    if (!value.ok) throw new Refusal("invalid", "file-not-right", value.problems);
    return value.value;
  };
}
