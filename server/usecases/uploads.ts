import { createWriteStream } from "node:fs";
import { mkdir, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { UUID } from "@roundbook/schemas";
import type { Context } from "./context.ts";
import { openCsv } from "./import/csv.ts";
import { Refusal } from "./refusal.ts";

export interface Upload {
  readonly id: string;
  readonly columns: readonly string[];
  readonly delimiter: string;
  /** The first rows, at most twenty. */
  readonly sample: readonly (readonly string[])[];
}

type Uploading = Context & { readonly uploads: string };

const SAMPLE_ROWS = 20;
const fileOf = (ctx: Uploading, id: string) => join(ctx.uploads, `${id}.csv`);

/** Counts what passes, so that a file without an announced length is bounded too. */
async function* upTo(limit: number, source: AsyncIterable<Uint8Array>) {
  let size = 0;
  for await (const part of source) {
    size += part.byteLength;
    if (size > limit) throw new Refusal("too-large", "too-large", [], { limit });
    yield part;
  }
}

/** Keeps a CSV file aside, streamed, and tells what its beginning looks like. */
export async function receiveUpload(
  ctx: Uploading,
  body: AsyncIterable<Uint8Array>,
  limit: number,
): Promise<Upload> {
  const id = ctx.newId();
  const file = fileOf(ctx, id);
  await mkdir(ctx.uploads, { recursive: true });
  try {
    await pipeline(Readable.from(upTo(limit, body)), createWriteStream(file));
    const csv = await openCsv(file, undefined, SAMPLE_ROWS);
    if (!csv.ok) throw new Refusal("invalid", "file-not-right", csv.problems);
    const { columns, delimiter, batches } = csv.value;
    const first = await batches().next();
    const rows = first.done ? [] : first.value;
    return { id, columns, delimiter, sample: rows.map(({ cells }) => cells) };
  } catch (error) {
    await rm(file, { force: true });
    throw error;
  }
}

/** Path of a file kept aside before. */
export async function uploadedFile(ctx: Uploading, id: string): Promise<string> {
  const file = fileOf(ctx, id);
  const known =
    new RegExp(UUID).test(id) &&
    (await stat(file).then(
      (at) => at.isFile(),
      () => false,
    ));
  if (!known) throw new Refusal("not-found", "no-such-import");
  return file;
}

/** Files of an earlier run of the server are of no use to anyone. */
export const clearUploads = (folder: string): Promise<void> =>
  rm(folder, { recursive: true, force: true });
