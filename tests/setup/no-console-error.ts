import { afterEach, beforeEach } from "vitest";

// A test that expects an error silences it with its own spy on console.error, so this never sees it.
let seen: string[] = [];
const original = console.error;

console.error = (...args: unknown[]) => {
  seen.push(args.map(String).join(" "));
  original(...args);
};

beforeEach(() => {
  seen = [];
});

afterEach(() => {
  const unexpected = seen;
  seen = [];
  if (unexpected.length > 0) throw new Error(`unexpected console.error: ${unexpected.join("\n")}`);
});
