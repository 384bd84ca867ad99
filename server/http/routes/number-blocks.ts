import { leaseNumbers } from "../../usecases/lease-numbers.ts";
import { Refusal } from "../../usecases/refusal.ts";
import type { Handlers } from "../handler.ts";

export const numberBlockRoutes: Handlers<"POST /api/number-blocks"> = {
  "POST /api/number-blocks": ({ ctx, session, body }) => {
    const retryAfter = ctx.limits.numberBlocks.take(`${body.device} ${body.prefix.toLowerCase()}`);
    if (retryAfter > 0) throw new Refusal("too-many", "too-many-requests", [], { retryAfter });
    return leaseNumbers(ctx, session, body);
  },
};
