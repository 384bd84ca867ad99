import type { SignedEntry } from "@roundbook/schemas";
import { putEvidence } from "../../usecases/put-evidence.ts";
import { readAsset } from "../../usecases/read-assets.ts";
import { readEvidence } from "../../usecases/read-evidence.ts";
import { readEntry, readHistory, readLog, readLogbook } from "../../usecases/read-history.ts";
import { receiveResult } from "../../usecases/receive-result.ts";
import { sealEntries } from "../../usecases/seal-entries.ts";
import { asLimit, found } from "../found.ts";
import type { Handlers } from "../handler.ts";
import { ndjson } from "../ndjson.ts";
import { readBytes } from "../read-body.ts";
import { EVIDENCE_LIMIT } from "../route-table.ts";

export const logbookRoutes: Handlers<
  | "GET /api/assets/:id/history"
  | "GET /api/logbook"
  | "GET /api/entries/:id"
  | "POST /api/entries"
  | "POST /api/entries/:id/results"
  | "PUT /api/evidence/:sha256"
  | "GET /api/evidence/:sha256"
  | "GET /api/export"
> = {
  "GET /api/assets/:id/history": async ({ ctx, param, query }) => {
    const { asset } = found(await readAsset(ctx, param("id")), "no-such-asset");
    return readHistory(ctx, asset.id, { ...query, limit: asLimit(query.limit) });
  },
  "GET /api/logbook": ({ ctx, query }) =>
    readLogbook(ctx, { ...query, limit: asLimit(query.limit) }),
  "GET /api/entries/:id": async ({ ctx, param }) =>
    found(await readEntry(ctx, param("id")), "no-such-entry"),

  "POST /api/entries": async ({ ctx, session, body }) => ({
    // The body of an entry is checked by the schema of its kind when it is sealed.
    outcomes: await sealEntries(ctx, session, body.entries as unknown as SignedEntry[]),
  }),

  "POST /api/entries/:id/results": ({ ctx, session, body, param }) =>
    receiveResult(ctx, session, param("id"), body),

  "PUT /api/evidence/:sha256": async ({ c, ctx, param }) =>
    putEvidence(ctx, param("sha256"), await readBytes(c, EVIDENCE_LIMIT)),

  "GET /api/evidence/:sha256": async ({ ctx, param }) => {
    const { mime, bytes } = found(await readEvidence(ctx, param("sha256")), "no-such-evidence");
    return new Response(new Uint8Array(bytes), {
      headers: {
        "content-type": mime,
        "content-length": String(bytes.byteLength),
        "cache-control": "private, max-age=31536000, immutable",
      },
    });
  },

  "GET /api/export": ({ ctx }) => ndjson(readLog(ctx)),
};
