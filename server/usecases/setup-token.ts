import { createHash, randomBytes, timingSafeEqual } from "node:crypto";

/** Lets exactly one person begin the estate; lives in memory only. */
export interface SetupToken {
  /** What to print; null when the estate already has its first owner. */
  readonly text: string | null;
  /** True for the one caller who now begins the estate; others wait until it is released. */
  claim(text: string): boolean;
  /** Gives the token back after a beginning that came to nothing. */
  release(): void;
}

const digest = (text: string) => createHash("sha256").update(text).digest();

export function createSetupToken(isEmpty: boolean): SetupToken {
  const text = isEmpty ? randomBytes(24).toString("base64url") : null;
  const secret = text === null ? null : digest(text);
  let claimed = false;
  return {
    text,
    claim(given) {
      if (claimed || secret === null || !timingSafeEqual(digest(given), secret)) return false;
      claimed = true;
      return true;
    },
    release() {
      claimed = false;
    },
  };
}
