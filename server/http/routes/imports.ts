import { importFile } from "../../usecases/import-file.ts";
import { receiveUpload, uploadedFile } from "../../usecases/uploads.ts";
import type { Call, Handlers } from "../handler.ts";
import { IMPORT_LIMIT } from "../route-table.ts";

type Importing = Call<"POST /api/imports/:id/trial"> | Call<"POST /api/imports/:id/run">;

const importing = async ({ ctx, session, body, param }: Importing, trial: boolean) =>
  importFile(ctx, session, { path: await uploadedFile(ctx, param("id")), mapping: body, trial });

export const importRoutes: Handlers<
  "POST /api/imports" | "POST /api/imports/:id/trial" | "POST /api/imports/:id/run"
> = {
  "POST /api/imports": ({ c, ctx }) => {
    const body = (c.req.raw.body ?? []) as unknown as AsyncIterable<Uint8Array>;
    return receiveUpload(ctx, body, IMPORT_LIMIT);
  },
  "POST /api/imports/:id/trial": (call) => importing(call, true),
  "POST /api/imports/:id/run": (call) => importing(call, false),
};
