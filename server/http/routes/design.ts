import { endInterval } from "../../usecases/end-interval.ts";
import { issueDraft } from "../../usecases/issue-checklist.ts";
import { putAssetType } from "../../usecases/put-asset-type.ts";
import { readBlock, readBlocks } from "../../usecases/read-blocks.ts";
import { readChecklist, readChecklists, readIssues } from "../../usecases/read-checklists.ts";
import { readDraft, readDrafts } from "../../usecases/read-drafts.ts";
import { readAssetTypes, readIntervals } from "../../usecases/read-register.ts";
import { removeBlock, saveBlock } from "../../usecases/save-block.ts";
import { beginDraft, discardDraft, saveDraft } from "../../usecases/save-draft.ts";
import { setInterval } from "../../usecases/set-interval.ts";
import { withdrawChecklist } from "../../usecases/withdraw-checklist.ts";
import { found } from "../found.ts";
import type { Handlers } from "../handler.ts";

export const designRoutes: Handlers<
  | "GET /api/checklists"
  | "GET /api/checklists/:hash"
  | "POST /api/checklists/:id/withdraw"
  | "GET /api/drafts"
  | "POST /api/drafts"
  | "GET /api/drafts/:checklist"
  | "PUT /api/drafts/:checklist"
  | "DELETE /api/drafts/:checklist"
  | "POST /api/drafts/:checklist/issue"
  | "GET /api/blocks"
  | "GET /api/blocks/:name"
  | "PUT /api/blocks/:name"
  | "DELETE /api/blocks/:name"
  | "GET /api/asset-types"
  | "PUT /api/asset-types/:name"
  | "GET /api/intervals"
  | "POST /api/intervals"
  | "PUT /api/intervals/:id"
  | "DELETE /api/intervals/:id"
> = {
  "GET /api/checklists": async ({ ctx, query: { of } }) => ({
    rows: of === undefined ? await readChecklists(ctx) : await readIssues(ctx, of),
  }),
  "GET /api/checklists/:hash": async ({ ctx, param }) =>
    found(await readChecklist(ctx, param("hash")), "no-such-checklist"),
  "POST /api/checklists/:id/withdraw": ({ ctx, session, body, param }) =>
    withdrawChecklist(ctx, session, param("id"), body.reason),

  "GET /api/drafts": async ({ ctx }) => ({ rows: await readDrafts(ctx) }),
  "POST /api/drafts": ({ ctx, session, body }) => beginDraft(ctx, session, body),
  "GET /api/drafts/:checklist": async ({ ctx, param }) =>
    found(await readDraft(ctx, param("checklist")), "no-such-draft"),
  "PUT /api/drafts/:checklist": ({ ctx, session, body, param }) =>
    saveDraft(ctx, session, param("checklist"), body),
  "DELETE /api/drafts/:checklist": ({ ctx, param }) => discardDraft(ctx, param("checklist")),
  "POST /api/drafts/:checklist/issue": ({ ctx, session, body, param }) =>
    issueDraft(ctx, session, param("checklist"), body),

  "GET /api/blocks": async ({ ctx }) => ({ rows: await readBlocks(ctx) }),
  "GET /api/blocks/:name": async ({ ctx, param }) =>
    found(await readBlock(ctx, param("name")), "no-such-block"),
  "PUT /api/blocks/:name": ({ ctx, session, body, param }) =>
    saveBlock(ctx, session, param("name"), body),
  "DELETE /api/blocks/:name": ({ ctx, param }) => removeBlock(ctx, param("name")),

  "GET /api/asset-types": async ({ ctx }) => ({ rows: await readAssetTypes(ctx) }),
  "PUT /api/asset-types/:name": ({ ctx, session, body: { version, ...type }, param }) =>
    putAssetType(ctx, session, param("name"), type, version),

  "GET /api/intervals": async ({ ctx }) => ({ rows: await readIntervals(ctx) }),
  "POST /api/intervals": ({ ctx, session, body }) => setInterval(ctx, session, body),
  "PUT /api/intervals/:id": async ({ ctx, session, body, param }) => {
    await setInterval(ctx, session, body, param("id"));
  },
  "DELETE /api/intervals/:id": ({ ctx, session, param }) => endInterval(ctx, session, param("id")),
};
