import type { Blobs } from "../blobs/blobs.ts";
import type { Context } from "../usecases/context.ts";
import type { SetupToken } from "../usecases/setup-token.ts";
import type { RateLimit } from "./rate-limit.ts";

/** What every route may use. */
export interface AppContext extends Context {
  readonly blobs: Blobs;
  readonly setupToken: SetupToken;
  /** Folder for files on their way in. */
  readonly uploads: string;
  /** Whether there is a mail server to send by. */
  readonly canMail: boolean;
  readonly limits: Limits;
}

export interface Limits {
  readonly signInName: RateLimit;
  readonly signInAddress: RateLimit;
  readonly session: RateLimit;
  readonly feed: RateLimit;
  readonly numberBlocks: RateLimit;
}
