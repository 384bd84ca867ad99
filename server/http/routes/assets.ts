import { countDue } from "../../usecases/count-due.ts";
import { readAsset, readAssets } from "../../usecases/read-assets.ts";
import { readDefects } from "../../usecases/read-defects.ts";
import { readDue } from "../../usecases/read-due.ts";
import { registerAsset } from "../../usecases/register-asset.ts";
import { asLimit, found } from "../found.ts";
import type { Handlers } from "../handler.ts";

export const assetRoutes: Handlers<
  | "GET /api/due"
  | "GET /api/due/count"
  | "GET /api/assets"
  | "POST /api/assets"
  | "GET /api/assets/:id"
  | "GET /api/defects"
> = {
  "GET /api/due": ({ ctx, query }) => readDue(ctx, { ...query, limit: asLimit(query.limit) }),
  "GET /api/due/count": ({ ctx, query }) => countDue(ctx, query),
  "GET /api/assets": ({ ctx, query }) => readAssets(ctx, { ...query, limit: asLimit(query.limit) }),
  "POST /api/assets": ({ ctx, session, body }) => registerAsset(ctx, session, body),
  "GET /api/assets/:id": async ({ ctx, param }) =>
    found(await readAsset(ctx, param("id")), "no-such-asset"),
  "GET /api/defects": ({ ctx, query: { open, limit, ...query } }) =>
    readDefects(ctx, {
      ...query,
      limit: asLimit(limit),
      open: open === undefined ? undefined : open === "1",
    }),
};
