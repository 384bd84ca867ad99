/** `capacity` requests at once, refilled evenly over `perMs`. */
export interface RateRule {
  readonly capacity: number;
  readonly perMs: number;
}

export interface RateLimit {
  /** Seconds to wait before this key may try again, or 0 when it may go on now. */
  take(key: string): number;
  /** Gives back what a key used, after it proved itself. */
  forgive(key: string): void;
}

interface Bucket {
  left: number;
  at: number;
}

const SWEEP_AT = 10_000;
const SWEEP_TO = 9_000;

/** A token bucket per key, in memory: a restart forgives everyone, which one process can afford. */
export function createRateLimit(rule: RateRule, now: () => number): RateLimit {
  const buckets = new Map<string, Bucket>();
  const perToken = rule.perMs / rule.capacity;

  const refill = (bucket: Bucket, at: number): Bucket => ({
    left: Math.min(rule.capacity, bucket.left + Math.max(0, at - bucket.at) / perToken),
    at,
  });

  /** Full buckets say nothing; past the bound the oldest go, so that memory stays bounded. */
  const sweep = (at: number) => {
    for (const [key, bucket] of buckets)
      if (refill(bucket, at).left >= rule.capacity) buckets.delete(key);
    for (const key of buckets.keys()) {
      if (buckets.size <= SWEEP_TO) break;
      buckets.delete(key);
    }
  };

  return {
    take(key) {
      const at = now();
      const bucket = refill(buckets.get(key) ?? { left: rule.capacity, at }, at);
      if (bucket.left < 1) return Math.max(1, Math.ceil(((1 - bucket.left) * perToken) / 1000));
      buckets.delete(key);
      buckets.set(key, { left: bucket.left - 1, at });
      if (buckets.size > SWEEP_AT) sweep(at);
      return 0;
    },
    forgive(key) {
      buckets.delete(key);
    },
  };
}
