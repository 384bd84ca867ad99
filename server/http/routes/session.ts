import { beginEstate, isEmptyEstate } from "../../usecases/begin-estate.ts";
import { readEstate } from "../../usecases/create-estate.ts";
import { enrolDevice } from "../../usecases/enrol-device.ts";
import { instantOf } from "../../usecases/instant-of.ts";
import { readPerson } from "../../usecases/read-register.ts";
import { Refusal } from "../../usecases/refusal.ts";
import { openSession, signIn } from "../../usecases/sign-in.ts";
import { signOut } from "../../usecases/sign-out.ts";
import type { Handlers } from "../handler.ts";
import type { RateLimit } from "../rate-limit.ts";
import { remoteAddress } from "../remote-address.ts";
import { dropCookie, giveCookie } from "../session-cookie.ts";

function spend(limit: RateLimit, key: string): void {
  const retryAfter = limit.take(key);
  if (retryAfter > 0) throw new Refusal("too-many", "too-many-tries", [], { retryAfter });
}

export const sessionRoutes: Handlers<
  | "GET /api/session"
  | "POST /api/setup"
  | "POST /api/session"
  | "DELETE /api/session"
  | "POST /api/devices"
> = {
  "GET /api/session": async ({ ctx, session }) => {
    const [empty, estate, person] = await Promise.all([
      isEmptyEstate(ctx),
      readEstate(ctx),
      session ? readPerson(ctx, session.person) : null,
    ]);
    return {
      empty,
      estate: estate && !empty ? { id: estate.id, name: estate.name } : null,
      person,
      now: instantOf(ctx.clock()),
    };
  },

  "POST /api/setup": async ({ c, ctx, body }) => {
    spend(ctx.limits.signInAddress, remoteAddress(c));
    const owner = await beginEstate(ctx, ctx.setupToken, body);
    giveCookie(c, await openSession(ctx, owner));
  },

  "POST /api/session": async ({ c, ctx, body }) => {
    spend(ctx.limits.signInAddress, remoteAddress(c));
    spend(ctx.limits.signInName, body.signIn);
    giveCookie(c, await signIn(ctx, body));
    ctx.limits.signInName.forgive(body.signIn);
  },

  "DELETE /api/session": async ({ c, ctx, token }) => {
    await signOut(ctx, token);
    dropCookie(c);
  },

  "POST /api/devices": ({ ctx, session, body }) => enrolDevice(ctx, session, body),
};
