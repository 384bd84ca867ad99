import { Hono } from "hono";
import type { Blobs } from "./blobs/blobs.ts";
import type { AppContext } from "./http/app-context.ts";
import { securityHeaders } from "./http/headers.ts";
import { createLimits } from "./http/limits.ts";
import { registerRoutes } from "./http/register-routes.ts";
import { type Report, replyProblem } from "./http/reply-problem.ts";
import { assetRoutes } from "./http/routes/assets.ts";
import { descriptionRoutes } from "./http/routes/description.ts";
import { designRoutes } from "./http/routes/design.ts";
import { digestRoutes } from "./http/routes/digest.ts";
import { dueRoutes } from "./http/routes/due.ts";
import { estateRoutes } from "./http/routes/estate.ts";
import { feedRoutes } from "./http/routes/feeds.ts";
import { importRoutes } from "./http/routes/imports.ts";
import { logbookRoutes } from "./http/routes/logbook.ts";
import { numberBlockRoutes } from "./http/routes/number-blocks.ts";
import { sessionRoutes } from "./http/routes/session.ts";
import { sameOrigin } from "./http/same-origin.ts";
import { squeezeReplies } from "./http/squeeze.ts";
import { type AppFolders, staticApps } from "./http/static-apps.ts";
import type { Store } from "./store/open-store.ts";
import { createContext } from "./usecases/context.ts";
import { Refusal } from "./usecases/refusal.ts";
import type { SetupToken } from "./usecases/setup-token.ts";

export interface AppParts {
  readonly store: Store;
  readonly blobs: Blobs;
  /** Milliseconds since the Unix epoch. */
  readonly clock: () => number;
  /** RFC 9562 version 7. */
  readonly newId: () => string;
  readonly setupToken: SetupToken;
  /** Folder for CSV files on their way in. */
  readonly uploads: string;
  readonly apps: AppFolders;
  /** Whether there is a mail server to send by; absent: there is none. */
  readonly canMail?: boolean;
  /** Told of errors of our own. */
  readonly report: Report;
}

/** The whole server without a socket: `createApp(parts).request(path, init)`. */
export function createApp({ store, clock, newId, apps, report, ...rest }: AppParts): Hono {
  const ctx: AppContext = {
    ...createContext({ store, clock, newId, report: (error) => report(error, "a use-case") }),
    ...rest,
    canMail: rest.canMail ?? false,
    limits: createLimits(clock),
  };
  const app = new Hono();
  app.onError((error, c) => replyProblem(error, c, report));
  app.notFound((c) => replyProblem(new Refusal("not-found", "no-such-route"), c, report));
  app.use(securityHeaders);
  app.use(sameOrigin);
  app.use("/api/sites/*", squeezeReplies);
  registerRoutes(app, ctx, {
    ...sessionRoutes,
    ...numberBlockRoutes,
    ...estateRoutes,
    ...assetRoutes,
    ...logbookRoutes,
    ...designRoutes,
    ...digestRoutes,
    ...dueRoutes,
    ...feedRoutes,
    ...importRoutes,
    ...descriptionRoutes,
  });
  app.all("/api/*", () => {
    throw new Refusal("not-found", "no-such-route");
  });
  app.get("*", staticApps(apps));
  return app;
}
