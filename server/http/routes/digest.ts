import { readDigest, setDigest } from "../../usecases/digest-setting.ts";
import type { Handlers } from "../handler.ts";

export const digestRoutes: Handlers<"GET /api/digest" | "PUT /api/digest"> = {
  "GET /api/digest": ({ ctx, session }) => readDigest(ctx, session, ctx.canMail),
  "PUT /api/digest": ({ ctx, session, body }) => setDigest(ctx, session, body),
};
