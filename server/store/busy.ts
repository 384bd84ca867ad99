/** Whether another connection held the lock; drizzle hides the code in `cause`. */
export function isBusy(error: unknown): boolean {
  for (let cause: unknown = error; cause instanceof Error; cause = cause.cause) {
    if ("code" in cause && String(cause.code).startsWith("SQLITE_BUSY")) return true;
  }
  return false;
}
