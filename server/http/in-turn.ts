const lines = new WeakMap<object, Promise<unknown>>();

/**
 * Runs `work` when everything queued before it for the same owner is done. The verbs of the desk
 * first look and then append; in turn, two managers cannot both be the next issue.
 */
export function inTurn<T>(owner: object, work: () => Promise<T>): Promise<T> {
  const before = lines.get(owner) ?? Promise.resolve();
  const now = before.then(work);
  lines.set(
    owner,
    now.catch(() => undefined),
  );
  return now;
}
