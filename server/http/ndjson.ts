import type { HistoryEntry } from "@roundbook/schemas";

const ENCODER = new TextEncoder();

/**
 * One sealed entry a line. Rows are taken from the store only as fast as the reader reads, so that
 * a whole log never stands in memory.
 */
export function ndjson(rows: AsyncIterable<HistoryEntry>): Response {
  const iterator = rows[Symbol.asyncIterator]();
  const body = new ReadableStream<Uint8Array>({
    async pull(controller) {
      const { done, value } = await iterator.next();
      if (done) return controller.close();
      const { entry, leaf, contents } = value;
      controller.enqueue(ENCODER.encode(`${JSON.stringify({ entry, leaf, contents })}\n`));
    },
    async cancel() {
      await iterator.return?.();
    },
  });
  return new Response(body, { headers: { "content-type": "application/x-ndjson" } });
}
